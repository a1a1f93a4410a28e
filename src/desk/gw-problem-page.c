/* gw-problem-page.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-problem-page.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MOST_PROBLEMS 6 /* on the page */
#define GAP           "\n<span size='40%'>\n</span>"

struct _GwProblemPage
{
  GtkWidget parent_instance;

  GtkWidget *paper;
  GtkLabel  *file, *reason, *cure;
  GtkWidget *again;
};

G_DEFINE_FINAL_TYPE (GwProblemPage, gw_problem_page, GTK_TYPE_WIDGET)

static gboolean
gw_problem_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GW_PROBLEM_PAGE (widget)->again);
}

static void
gw_problem_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_PROBLEM_PAGE);

  G_OBJECT_CLASS (gw_problem_page_parent_class)->dispose (object);
}

static void
gw_problem_page_class_init (GwProblemPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_problem_page_dispose;
  widget_class->grab_focus = gw_problem_page_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-problem-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GwProblemPage, paper);
  gtk_widget_class_bind_template_child (widget_class, GwProblemPage, file);
  gtk_widget_class_bind_template_child (widget_class, GwProblemPage, reason);
  gtk_widget_class_bind_template_child (widget_class, GwProblemPage, cure);
  gtk_widget_class_bind_template_child (widget_class, GwProblemPage, again);
}

static void
gw_problem_page_init (GwProblemPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

const char *
gw_problem_text (GwDocument *document)
{
  const char      *message = gw_document_get_error (document)->message;
  g_autofree char *name = gw_document_get_name (document);
  const gsize      length = strlen (name);

  if (g_str_has_prefix (message, name) && g_str_has_prefix (message + length, ": "))
    return message + length + strlen (": ");

  return message;
}

/* All errors of the reading, each under its place; if there are none, the one that followed. */
static char *
reason_markup (GwDocument *document)
{
  const GPtrArray *problems = gw_document_get_problems (document);
  const guint      n = gw_problems_count (problems);
  GString         *text = g_string_new (NULL);
  guint            n_told = 0;

  for (guint i = 0; i < problems->len && n_told < MOST_PROBLEMS; i++)
    {
      const GwProblem *problem = g_ptr_array_index (problems, i);
      g_autofree char *markup = NULL;

      if (!problem->is_error)
        continue;
      if (n_told > 0)
        g_string_append (text, GAP);
      markup = g_markup_printf_escaped ("<b>%s</b>\n%s", problem->path, problem->message);
      g_string_append (text, markup);
      n_told++;
    }

  if (n > n_told)
    g_string_append_printf (
      text, g_dngettext (GETTEXT_PACKAGE, "\nand %u more", "\nand %u more", n - n_told),
      n - n_told);
  else if (n == 0)
    {
      g_autofree char *markup = g_markup_escape_text (gw_problem_text (document), -1);

      g_string_append (text, markup);
    }

  return g_string_free (text, FALSE);
}

static const char *
cure_text (const GError *error)
{
  if (error->domain != GW_STUDY_ERROR)
    return "";

  switch ((GwStudyError) error->code)
    {
    case GW_STUDY_ERROR_FILE:
      return _ ("As soon as the file can be read it is shown here.");
    case GW_STUDY_ERROR_VERSION:
      return "";
    case GW_STUDY_ERROR_SYNTAX:
    case GW_STUDY_ERROR_CONTENT:
    case GW_STUDY_ERROR_CALCULATION:
    default:
      return _ ("Correct the file in a text editor and save it; it is then read again by itself.");
    }
}

void
gw_problem_page_show (GwProblemPage *self,
                      GwDocument    *document)
{
  GFile           *file = gw_document_get_file (document);
  g_autofree char *name =
    file != NULL ? g_file_get_parse_name (file) : gw_document_get_name (document);
  g_autofree char *reason = reason_markup (document);
  const char      *cure = cure_text (gw_document_get_error (document));

  g_return_if_fail (GW_IS_PROBLEM_PAGE (self));

  gtk_label_set_text (self->file, name);
  gtk_label_set_markup (self->reason, reason);
  gtk_label_set_text (self->cure, cure);
  gtk_widget_set_visible (GTK_WIDGET (self->cure), *cure != '\0');
}
