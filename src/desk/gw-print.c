/* gw-print.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-print.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GwEvaluation *evaluation;
  guint         shown;
  GwUnits       units;
} Job;

static void
job_free (gpointer  data,
          GClosure *closure)
{
  Job *job = data;

  gw_evaluation_unref (job->evaluation);
  g_free (job);
}

static GwDrawing *
paper_drawing_new (GwEvaluation  *evaluation,
                   guint          shown,
                   const GwUnits *units,
                   double         width,
                   double         height)
{
  g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, shown, TRUE, units);

  return gw_sheet_draw (sheet, GW_FIGURE_SHEET, width, height, FALSE);
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page,
              gpointer           data)
{
  const Job *job = data;
  GwDrawing *drawing =
    paper_drawing_new (job->evaluation, job->shown, &job->units,
                       gtk_print_context_get_width (context),
                       gtk_print_context_get_height (context));

  gw_drawing_ink (drawing, gtk_print_context_get_cairo_context (context));
  gw_drawing_free (drawing);
}

static GtkPageSetup *
page_setup_new (const GwPaper *paper)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  /* By this name GTK and the printer know it as one of their own; upright. */
  GtkPaperSize *size =
    gtk_paper_size_new_from_ppd (paper->name, paper->name, paper->height, paper->width);

  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_LANDSCAPE);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_paper_size_free (size);
  return setup;
}

GtkPrintOperation *
gw_print_new (GwEvaluation  *evaluation,
              guint          shown,
              const GwPaper *paper,
              const GwUnits *units)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = page_setup_new (paper);
  Job *job = g_new (Job, 1);

  *job = (Job){ gw_evaluation_ref (evaluation), shown,
                units != NULL ? *units : *gw_units_standard () };
  gtk_print_operation_set_job_name (operation, gw_study_title (evaluation->study));
  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE); /* the sheet has margins of its own */
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (draw_page_cb), job, job_free, 0);
  return operation;
}

gboolean
gw_print_to_file (GwEvaluation  *evaluation,
                  guint          shown,
                  const GwPaper *paper,
                  const GwUnits *units,
                  GFile         *file,
                  GError       **error)
{
  g_autofree char *path = g_file_get_path (file);
  GwDrawing       *drawing;
  GwFileKind       kind;
  gboolean         is_written;

  if (path == NULL)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
                   _ ("choose a folder of this computer"));
      return FALSE;
    }
  if (!gw_file_kind_of (path, &kind, error))
    return FALSE;

  drawing = paper_drawing_new (evaluation, shown, units, paper->width, paper->height);
  is_written = gw_export_drawing (drawing, paper->width, paper->height,
                                  gw_study_title (evaluation->study), kind, path, error);
  gw_drawing_free (drawing);
  return is_written;
}

const char *
gw_study_title (const GwStudy *study)
{
  return study->name != NULL && *study->name != '\0' ? study->name : _ ("Study without a name");
}
