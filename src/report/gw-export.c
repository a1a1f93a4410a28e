/* gw-export.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "report/gw-export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define PIXELS_PER_POINT 2.0 /* of a PNG */

static const GwPaper papers[] = {
  { "A4", 841.89, 595.28 },
  { "A3", 1190.55, 841.89 },
  { "Letter", 792.0, 612.0 },
};

const GwPaper *
gw_paper_get (guint i)
{
  return i < G_N_ELEMENTS (papers) ? &papers[i] : NULL;
}

const GwPaper *
gw_paper_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_ascii_strcasecmp (papers[i].name, name) == 0)
      return &papers[i];

  return NULL;
}

gboolean
gw_file_kind_of (const char *path,
                 GwFileKind *kind,
                 GError    **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);

  if (g_str_has_suffix (lower, ".pdf"))
    *kind = GW_FILE_PDF;
  else if (g_str_has_suffix (lower, ".svg"))
    *kind = GW_FILE_SVG;
  else if (g_str_has_suffix (lower, ".png"))
    *kind = GW_FILE_PNG;
  else
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
                   _ ("“%s” does not end in .pdf, .svg or .png"), path);
      return FALSE;
    }

  return TRUE;
}

static cairo_status_t
gather_cb (void                *closure,
           const unsigned char *data,
           unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
set_pdf_dates (cairo_surface_t *surface,
               const char      *title)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR,
                                  "Gramwright " PACKAGE_VERSION);
  if (epoch != NULL)
    {
      g_autoptr (GDateTime) date =
        g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10));
      g_autofree char *text = date != NULL ? g_date_time_format (date, "%Y-%m-%dT%H:%M:%SZ") : NULL;

      if (text == NULL)
        return;
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, text);
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, text);
    }
}

static cairo_surface_t *
surface_new (GwFileKind  kind,
             double      width,
             double      height,
             const char *title,
             GByteArray *bytes)
{
  cairo_surface_t *surface;

  switch (kind)
    {
    case GW_FILE_PDF:
      surface = cairo_pdf_surface_create_for_stream (gather_cb, bytes, width, height);
      set_pdf_dates (surface, title);
      return surface;
    case GW_FILE_SVG:
      return cairo_svg_surface_create_for_stream (gather_cb, bytes, width, height);
    case GW_FILE_PNG:
    default:
      surface =
        cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width * PIXELS_PER_POINT),
                                    (int) ceil (height * PIXELS_PER_POINT));
      cairo_surface_set_device_scale (surface, PIXELS_PER_POINT, PIXELS_PER_POINT);
      return surface;
    }
}

static cairo_status_t
draw (const GwDrawing *drawing,
      cairo_surface_t *surface,
      GwFileKind       kind,
      GByteArray      *bytes)
{
  const GwTheme *theme = gw_drawing_theme (drawing);
  const double  *paper = theme->rgb[GW_TONE_PAPER];
  cairo_t       *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_set_source_rgb (cr, paper[0], paper[1], paper[2]);
  cairo_paint (cr);
  gw_drawing_ink (drawing, cr);
  status = cairo_status (cr);
  cairo_destroy (cr);

  if (status == CAIRO_STATUS_SUCCESS && kind == GW_FILE_PNG)
    status = cairo_surface_write_to_png_stream (surface, gather_cb, bytes);
  cairo_surface_finish (surface);
  return status != CAIRO_STATUS_SUCCESS ? status : cairo_surface_status (surface);
}

GBytes *
gw_export_bytes (const GwDrawing *drawing,
                 double           width,
                 double           height,
                 const char      *title,
                 GwFileKind       kind,
                 GError         **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = surface_new (kind, width, height, title, bytes);
  cairo_status_t   status = draw (drawing, surface, kind, bytes);

  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));

  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE, _ ("the figure cannot be drawn: %s"),
               cairo_status_to_string (status));
  return NULL;
}

gboolean
gw_export_drawing (const GwDrawing *drawing,
                   double           width,
                   double           height,
                   const char      *title,
                   GwFileKind       kind,
                   const char      *path,
                   GError         **error)
{
  g_autoptr (GBytes) bytes = gw_export_bytes (drawing, width, height, title, kind, error);
  g_autoptr (GError) reason = NULL;

  if (bytes == NULL)
    return FALSE;

  if (!g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes),
                            &reason))
    {
      /* "Failed to create file “sheet.pdf.X3ZC2R”: No such file or directory" */
      const char *cause = strrchr (reason->message, ':');

      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE, _ ("%s cannot be written: %s"), path,
                   cause != NULL && cause[1] == ' ' ? cause + 2 : reason->message);
      return FALSE;
    }

  return TRUE;
}
