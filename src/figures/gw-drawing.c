/* gw-drawing.c - the list of marks
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "figures/gw-drawing-private.h"

struct _GwDrawing
{
  const GwTheme *theme;
  double         type;    /* factor on all text */
  PangoLayout   *layout;  /* what the others are copies of */
  GHashTable    *layouts; /* of texts set before: the same ones are asked for again and again */
  GwMark        *marks;
  size_t         n, size;
  double        *xy;
  size_t         n_points, size_points;
  GwViewFrame    views[GW_N_VIEWS];
  GArray        *found, *given; /* places: of this layout, to be followed */
  size_t         next;          /* of those given */
};

#define MOST_LAYOUTS 1000

static const double font_sizes[GW_N_FONTS] = { 7.5, 8.5, 10, 13 };

static PangoLayout *
layout_new (void)
{
  PangoFontMap         *map = pango_cairo_font_map_get_default ();
  PangoContext         *context = pango_font_map_create_context (map);
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoAttrList        *attributes = pango_attr_list_new ();
  PangoLayout          *layout;

  /* A text measures the same on every surface and at every zoom. */
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  pango_cairo_context_set_resolution (context, 72);
  pango_context_set_round_glyph_positions (context, FALSE);
  /* Else each font is looked up once more for texts without a letter. */
  pango_context_set_language (context, pango_language_get_default ());

  layout = pango_layout_new (context);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_single_paragraph_mode (layout, TRUE);

  pango_attr_list_unref (attributes);
  cairo_font_options_destroy (options);
  g_object_unref (context);

  return layout;
}

static GHashTable *
layouts_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
}

GwDrawing *
gw_drawing_new (const GwTheme *theme)
{
  GwDrawing *drawing = g_new0 (GwDrawing, 1);

  drawing->theme = theme;
  drawing->type = 1;
  drawing->layout = layout_new ();
  drawing->layouts = layouts_new ();
  drawing->found = g_array_new (FALSE, FALSE, sizeof (double));
  drawing->given = g_array_new (FALSE, FALSE, sizeof (double));

  return drawing;
}

void
gw_drawing_free (GwDrawing *drawing)
{
  if (drawing == NULL)
    return;
  gw_drawing_cut (drawing, 0);
  g_hash_table_unref (drawing->layouts);
  g_array_unref (drawing->found);
  g_array_unref (drawing->given);
  g_object_unref (drawing->layout);
  g_free (drawing->marks);
  g_free (drawing->xy);
  g_free (drawing);
}

void
gw_drawing_set_type (GwDrawing *drawing,
                     double     factor)
{
  drawing->type = CLAMP (factor, 0.8, 2);
  g_hash_table_unref (drawing->layouts);
  drawing->layouts = layouts_new ();
}

const GwTheme *
gw_drawing_theme (const GwDrawing *drawing)
{
  return drawing->theme;
}

size_t
gw_drawing_n (const GwDrawing *drawing)
{
  return drawing->n;
}

const GwMark *
gw_drawing_mark (const GwDrawing *drawing,
                 size_t           i)
{
  return &drawing->marks[i];
}

const double *
gw_drawing_points (const GwDrawing *drawing)
{
  return drawing->xy;
}

void
gw_drawing_cut (GwDrawing *drawing,
                size_t     n)
{
  while (drawing->n > n)
    {
      GwMark *mark = &drawing->marks[--drawing->n];

      drawing->n_points = mark->first;
      g_free (mark->text);
    }
}

void
gw_drawing_clear (GwDrawing *drawing)
{
  gw_drawing_cut (drawing, 0);
  gw_drawing_forget (drawing, 0);
  memset (drawing->views, 0, sizeof drawing->views);
  drawing->next = 0;
}

void
gw_drawing_follow (GwDrawing       *drawing,
                   const GwDrawing *like)
{
  g_array_set_size (drawing->given, 0);
  drawing->next = 0;
  if (like == NULL)
    return;

  if (like->found->len > 0)
    g_array_append_vals (drawing->given, like->found->data, like->found->len);
  /* Most of its texts are those of the other one. */
  if (drawing->type == like->type && drawing->layouts != like->layouts)
    {
      g_hash_table_unref (drawing->layouts);
      drawing->layouts = g_hash_table_ref (like->layouts);
    }
}

size_t
gw_drawing_places (const GwDrawing *drawing)
{
  return drawing->found->len;
}

void
gw_drawing_forget (GwDrawing *drawing,
                   size_t     places)
{
  g_array_set_size (drawing->found, (guint) places);
}

/* Each place is led by its length. */
void
gw_drawing_remember (GwDrawing    *drawing,
                     size_t        n,
                     const double *values)
{
  const double length = (double) n;

  g_array_append_val (drawing->found, length);
  g_array_append_vals (drawing->found, values, (guint) n);
}

bool
gw_drawing_recall (GwDrawing *drawing,
                   size_t     n,
                   double    *values)
{
  const double *given = (const double *) drawing->given->data;

  if (drawing->next >= drawing->given->len)
    return false;
  if (given[drawing->next] != (double) n)
    {
      drawing->next = drawing->given->len;
      return false;
    }

  memcpy (values, given + drawing->next + 1, n * sizeof *values);
  drawing->next += n + 1;
  gw_drawing_remember (drawing, n, values);
  return true;
}

void
gw_drawing_set_view (GwDrawing         *drawing,
                     GwView             view,
                     const GwViewFrame *frame)
{
  drawing->views[view] = *frame;
}

const GwViewFrame *
gw_drawing_view (const GwDrawing *drawing,
                 GwView           view)
{
  return &drawing->views[view];
}

static PangoFontDescription *
describe (const GwDrawing *drawing,
          GwFont           font,
          GwTextStyle      style)
{
  const bool            is_bold = font >= GW_FONT_HEAD || style == GW_STYLE_BOLD;
  PangoFontDescription *description = pango_font_description_new ();

  pango_font_description_set_family_static (description, drawing->theme->font);
  pango_font_description_set_size (description,
                                   (int) lround (font_sizes[font] * drawing->type * PANGO_SCALE));
  pango_font_description_set_weight (description,
                                     is_bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_style (description, style == GW_STYLE_ITALIC ? PANGO_STYLE_ITALIC
                                                                          : PANGO_STYLE_NORMAL);
  return description;
}

/* Wrapped text has a layout of its own. */
static PangoLayout *
find_layout (const GwDrawing *drawing,
             const char      *text,
             GwFont           font,
             GwTextStyle      style,
             bool             is_wrapped)
{
  const size_t          length = strlen (text);
  char                  stack[128];
  char                 *key = length + 2 < sizeof stack ? stack : g_malloc (length + 2);
  PangoLayout          *layout;
  PangoFontDescription *description;

  key[0] = (char) (1 + 2 * ((int) font * GW_N_FONTS + (int) style) + is_wrapped);
  memcpy (key + 1, text, length + 1);
  layout = g_hash_table_lookup (drawing->layouts, key);
  if (layout == NULL)
    {
      if (g_hash_table_size (drawing->layouts) >= MOST_LAYOUTS)
        g_hash_table_remove_all (drawing->layouts);
      layout = pango_layout_copy (drawing->layout);
      description = describe (drawing, font, style);
      pango_layout_set_font_description (layout, description);
      pango_font_description_free (description);
      pango_layout_set_text (layout, text, -1);
      g_hash_table_insert (drawing->layouts, g_strdup (key), layout);
    }
  if (key != stack)
    g_free (key);

  return layout;
}

PangoLayout *
gw_drawing_layout (const GwDrawing *drawing,
                   const char      *text,
                   GwFont           font,
                   GwTextStyle      style)
{
  return find_layout (drawing, text, font, style, false);
}

PangoLayout *
gw_drawing_wrapped (const GwDrawing *drawing,
                    const char      *text,
                    GwFont           font,
                    GwTextStyle      style,
                    double           width)
{
  PangoLayout *layout = find_layout (drawing, text, font, style, true);

  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, (int) floor (fmax (width, 1) * PANGO_SCALE));
  return layout;
}

void
gw_drawing_measure (GwDrawing  *drawing,
                    const char *text,
                    GwFont      font,
                    GwTextStyle style,
                    double     *width,
                    double     *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (gw_drawing_layout (drawing, text, font, style), NULL, &logical);
  if (width != NULL)
    *width = (double) logical.width / PANGO_SCALE;
  if (height != NULL)
    *height = (double) logical.height / PANGO_SCALE;
}

static GwMark *
mark_new (GwDrawing    *drawing,
          GwMarkKind    kind,
          size_t        n,
          const double *xy)
{
  GwMark *mark;

  if (drawing->n == drawing->size)
    {
      drawing->size = 2 * drawing->size + 64;
      drawing->marks = g_renew (GwMark, drawing->marks, drawing->size);
    }
  if (drawing->n_points + n > drawing->size_points)
    {
      drawing->size_points = 2 * drawing->size_points + n + 256;
      drawing->xy = g_renew (double, drawing->xy, 2 * drawing->size_points);
    }

  mark = &drawing->marks[drawing->n++];
  memset (mark, 0, sizeof *mark);
  mark->kind = kind;
  mark->opacity = 1;
  mark->target = GW_TARGET_NONE;
  mark->first = drawing->n_points;
  mark->n = n;
  if (n > 0)
    memcpy (drawing->xy + 2 * drawing->n_points, xy, 2 * n * sizeof *xy);
  drawing->n_points += n;

  return mark;
}

GwMark *
gw_drawing_path (GwDrawing    *drawing,
                 size_t        n,
                 const double *xy,
                 GwLineType    line,
                 GwTone        stroke)
{
  GwMark *mark = mark_new (drawing, GW_MARK_PATH, n, xy);
  double  low[2] = { INFINITY, INFINITY };
  double  high[2] = { -INFINITY, -INFINITY };

  mark->line = line;
  mark->stroke = stroke;
  for (size_t i = 0; i < 2 * n; i++)
    {
      low[i % 2] = fmin (low[i % 2], xy[i]);
      high[i % 2] = fmax (high[i % 2], xy[i]);
    }
  if (n > 0)
    mark->box = (GwBox){ low[0], low[1], high[0] - low[0], high[1] - low[1] };

  return mark;
}

GwMark *
gw_drawing_text (GwDrawing  *drawing,
                 double      x,
                 double      y,
                 const char *text,
                 GwFont      font,
                 GwTone      tone)
{
  GwMark *mark = mark_new (drawing, GW_MARK_TEXT, 1, (double[]){ x, y });

  mark->text = g_strdup (text);
  mark->font = font;
  mark->stroke = tone;
  gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_START);

  return mark;
}

GwMark *
gw_drawing_symbol (GwDrawing *drawing,
                   GwMarkKind kind,
                   double     x,
                   double     y,
                   double     size,
                   GwTone     tone)
{
  GwMark *mark = mark_new (drawing, kind, 1, (double[]){ x, y });

  mark->stroke = tone;
  mark->size = size;
  mark->box = (GwBox){ x - size / 2, y - size / 2, size, size };

  return mark;
}

void
gw_drawing_align (GwDrawing *drawing,
                  GwMark    *mark,
                  GwAlign    align_x,
                  GwAlign    align_y)
{
  const double *at = drawing->xy + 2 * mark->first;
  double        c = cos (mark->turn), s = sin (mark->turn);
  double        width, height, left, top;

  mark->align_x = align_x;
  mark->align_y = align_y;
  gw_drawing_measure (drawing, mark->text, mark->font, mark->style, &width, &height);
  left = -0.5 * align_x * width;
  top = -0.5 * align_y * height;

  /* Corners of the text about its point, turned; y grows downward. */
  {
    double x0 = fmin (0, c * width) + fmin (0, s * height);
    double x1 = fmax (0, c * width) + fmax (0, s * height);
    double y0 = fmin (0, -s * width) + fmin (0, c * height);
    double y1 = fmax (0, -s * width) + fmax (0, c * height);

    mark->box.x = at[0] + c * left + s * top + x0;
    mark->box.y = at[1] - s * left + c * top + y0;
    mark->box.width = x1 - x0;
    mark->box.height = y1 - y0;
  }
}

void
gw_drawing_point_at (GwDrawing *drawing,
                     size_t     since,
                     GwTarget   target)
{
  for (size_t i = since; i < drawing->n; i++)
    drawing->marks[i].target = target;
}

static double
segment_distance (const double *a,
                  const double *b,
                  double        x,
                  double        y)
{
  double dx = b[0] - a[0], dy = b[1] - a[1];
  double length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((x - a[0]) * dx + (y - a[1]) * dy) / length2 : 0;

  t = CLAMP (t, 0, 1);
  return hypot (a[0] + t * dx - x, a[1] + t * dy - y);
}

static bool
path_is_hit (const GwMark *mark,
             const double *xy,
             double        x,
             double        y,
             double        reach)
{
  bool is_inside = false;

  for (size_t i = 0; i < mark->n; i++)
    {
      const double *a = xy + 2 * i;
      const double *b = i + 1 < mark->n ? a + 2 : xy;

      if (i + 1 == mark->n && !mark->is_closed)
        break;
      if (segment_distance (a, b, x, y) <= reach)
        return true;
      if ((a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
        is_inside = !is_inside;
    }

  return mark->is_closed && is_inside;
}

GwTarget
gw_drawing_hit (const GwDrawing *drawing,
                double           x,
                double           y,
                double           reach)
{
  for (size_t i = drawing->n; i-- > 0;)
    {
      const GwMark *mark = &drawing->marks[i];
      const GwBox  *box = &mark->box;

      if (mark->target.group < 0 || x < box->x - reach || x > box->x + box->width + reach ||
          y < box->y - reach || y > box->y + box->height + reach)
        continue;
      if (mark->kind != GW_MARK_PATH ||
          path_is_hit (mark, drawing->xy + 2 * mark->first, x, y, reach))
        return mark->target;
    }

  return GW_TARGET_NONE;
}
