/* main.c - the command line
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <errno.h>
#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#if HAVE_DESK
# include "desk/gw-application.h"
#endif
#include "report/gw-derivation.h"
#include "report/gw-export.h"
#include "report/gw-results-text.h"
#include "report/gw-section-figures.h"
#include "study/gw-fields.h"
#include "study/gw-result.h"
#include "study/gw-section-file.h"

enum
{
  EXIT_FINE = 0,
  EXIT_STUDY = 1, /* the study has errors or cannot be read, or a file cannot be written */
  EXIT_USAGE = 2,
};

/* What the options of all commands say; each command refuses those that are not its own. */
typedef struct
{
  char   **rest;
  char    *output, *figure, *option, *paper, *size, *units, *why;
  gboolean is_json, is_dark, is_smooth;
} Arguments;

static int
usage_error (const char *format,
             ...) G_GNUC_PRINTF (1, 2);

static int
usage_error (const char *format,
             ...)
{
  g_autofree char *text = NULL;
  va_list          args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_printerr ("gramwright: %s\n%s\n", text, _ ("Try “gramwright --help”."));
  return EXIT_USAGE;
}

static int
study_error (const GError *error)
{
  g_printerr ("gramwright: %s\n", error->message);
  return EXIT_STUDY;
}

static void
print_problems (const GPtrArray *problems)
{
  for (guint i = 0; i < problems->len; i++)
    {
      const GwProblem *problem = g_ptr_array_index (problems, i);

      g_printerr ("%s: %s%s%s\n", problem->is_error ? _ ("error") : _ ("hint"), problem->path,
                  *problem->path != '\0' ? ": " : "", problem->message);
    }
}

/* "wing:final.gramwright" is a file here, not an address; only "://" makes one. */
static GFile *
study_file (const char *text)
{
  return strstr (text, "://") != NULL ? g_file_new_for_uri (text) : g_file_new_for_path (text);
}

/* A full disk must not pass for success. */
static int
print_text (const char *text)
{
  if (fputs (text, stdout) >= 0 && fflush (stdout) == 0)
    return EXIT_FINE;

  g_printerr ("gramwright: %s: %s\n", _ ("the output cannot be written"), g_strerror (errno));
  return EXIT_STUDY;
}

static GwStudy *
load (const char *path,
      GError    **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GFile) file = study_file (path);
  GwStudy *study = gw_study_load (file, problems, error);

  if (study != NULL)
    print_problems (problems); /* hints alone */

  return study;
}

static GwEvaluation *
evaluate (const char *path,
          GError    **error)
{
  g_autoptr (GwStudy) study = load (path, error);

  return study != NULL ? gw_evaluation_new (study, NULL, error) : NULL;
}

/* The option named on the command line, else the baseline; FALSE if there is none of that name. */
static gboolean
find_option (const GwEvaluation *evaluation,
             const char         *id,
             guint              *option)
{
  *option = evaluation->baseline;
  if (id == NULL)
    return TRUE;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    if (g_str_equal (gw_evaluation_outcome (evaluation, i)->id, id))
      {
        *option = i;
        return TRUE;
      }

  return FALSE;
}

static int
unknown_result (const char *key)
{
  g_autoptr (GString) keys = g_string_new (NULL);

  for (guint i = 0; i < GW_N_RESULTS; i++)
    g_string_append_printf (keys, "%s%s", i > 0 ? ", " : "", gw_result_info ((GwResultId) i)->key);

  return usage_error (_ ("there is no result “%s”; there are %s"), key, keys->str);
}

static int
print_why (const GwEvaluation *evaluation,
           Arguments          *arguments,
           GwResultId          id)
{
  g_autoptr (GwDerivation) derivation = NULL;
  g_autofree char *text = NULL;
  guint            option;

  if (!find_option (evaluation, arguments->option, &option))
    return usage_error (_ ("the study has no option “%s”"), arguments->option);

  derivation = gw_derivation_new (evaluation, option, id, gw_units_standard ());
  text = gw_derivation_text (derivation);
  return print_text (text);
}

static int
run_evaluate (Arguments *arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwEvaluation) evaluation = NULL;
  g_autofree char *text = NULL;
  GwResultId       id = GW_RESULT_MASS;

  if (arguments->why == NULL && arguments->option != NULL)
    return usage_error (_ ("evaluate takes --option with --why alone"));
  if (arguments->why != NULL && arguments->is_json)
    return usage_error (_ ("evaluate takes either --json or --why"));
  if (arguments->why != NULL && !gw_derivation_find (arguments->why, &id))
    return unknown_result (arguments->why);

  evaluation = evaluate (arguments->rest[0], &error);
  if (evaluation == NULL)
    return study_error (error);
  if (arguments->why != NULL)
    return print_why (evaluation, arguments, id);

  text = arguments->is_json ? gw_results_json (evaluation) : gw_results_table (evaluation);
  return print_text (text);
}

static int
run_check (Arguments *arguments)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = study_file (arguments->rest[0]);
  g_autoptr (GwStudy) study = gw_study_load (file, problems, &error);

  print_problems (problems);
  if (study == NULL)
    return gw_problems_count (problems) > 0 ? EXIT_STUDY : study_error (error);

  g_print ("%s: %s\n", arguments->rest[0], _ ("the study is in order"));
  return EXIT_FINE;
}

static int
run_fields (Arguments *arguments)
{
  g_autofree char *text = arguments->is_json ? gw_fields_json () : gw_fields_text ();

  return print_text (text);
}

/* "640x480", in points. */
static gboolean
parse_size (const char *text,
            double     *width,
            double     *height)
{
  char *end = NULL;

  *width = g_ascii_strtod (text, &end);
  if (*end != 'x')
    return FALSE;
  *height = g_ascii_strtod (end + 1, &end);
  return *end == '\0' && *width >= 160.0 && *width <= 10000.0 && *height >= 120.0 &&
         *height <= 10000.0;
}

/* "in,oz,mph", each with what goes with it; FALSE if one is none to choose. */
static gboolean
parse_units (const char *text,
             GwUnits    *units)
{
  g_auto (GStrv) names = g_strsplit (text, ",", -1);

  for (guint i = 0; names[i] != NULL; i++)
    if (!gw_units_choose (units, names[i]))
      return FALSE;

  return names[0] != NULL;
}

/* Of the sheet, or of the sections. */
typedef struct
{
  gboolean            is_of_sections;
  GwFigureKind        kind;
  GwSectionFigureKind section_kind;
} Figure;

static gboolean
parse_figure (const char *name,
              Figure     *figure)
{
  figure->is_of_sections = gw_section_figure_parse (name, &figure->section_kind);
  return figure->is_of_sections || gw_figure_kind_parse (name, &figure->kind);
}

/* Figures of sections are of all options unless one is named. (transfer full) */
static GwDrawing *
draw_sections (GwEvaluation       *evaluation,
               GwSectionFigureKind kind,
               const Arguments    *arguments,
               guint               option,
               const GwUnits      *units,
               double              width,
               double              height)
{
  GwSectionChoice choice = GW_SECTION_CHOICE_ALL;
  g_autoptr (GwSectionSheet) sheet = NULL;

  if (arguments->option != NULL)
    choice.option = (int) option;
  sheet = gw_section_sheet_new (evaluation, kind, &choice, units, NULL, NULL);
  return gw_section_sheet_draw (sheet, width, height, arguments->is_dark);
}

static int
write_figure (Arguments    *arguments,
              const Figure *figure,
              GwFileKind    kind,
              double        width,
              double        height,
              gboolean      is_paper)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwEvaluation) evaluation = NULL;
  GwUnits    units = *gw_units_standard ();
  GwDrawing *drawing;
  gboolean   is_written;
  guint      option;

  if (arguments->units != NULL && !parse_units (arguments->units, &units))
    return usage_error (_ ("“%s” names no units to show; there are mm, cm, in, g, oz, m/s, km/h, "
                           "mph, kt, as in in,oz,mph"),
                        arguments->units);

  evaluation = evaluate (arguments->rest[0], &error);
  if (evaluation == NULL)
    return study_error (error);
  if (!find_option (evaluation, arguments->option, &option))
    return usage_error (_ ("the study has no option “%s”"), arguments->option);

  if (figure->is_of_sections)
    drawing = draw_sections (evaluation, figure->section_kind, arguments, option, &units, width,
                             height);
  else
    {
      g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, option, is_paper, &units);

      drawing = gw_sheet_draw (sheet, figure->kind, width, height, arguments->is_dark);
    }
  is_written =
    gw_export_drawing (drawing, width, height,
                       evaluation->study->name != NULL ? evaluation->study->name : "Gramwright",
                       kind, arguments->output, &error);
  gw_drawing_free (drawing);
  return is_written ? EXIT_FINE : study_error (error);
}

static int
run_draw (Arguments *arguments)
{
  g_autoptr (GError) error = NULL;
  const GwPaper *paper = gw_paper_find (arguments->paper != NULL ? arguments->paper : "A4");
  Figure         figure;
  GwFileKind     kind;
  double         width = 480.0, height = 360.0;

  if (arguments->figure == NULL)
    return usage_error (_ ("draw needs --figure NAME"));
  if (arguments->output == NULL)
    return usage_error (_ ("draw needs -o FILE"));
  if (!parse_figure (arguments->figure, &figure))
    return usage_error (
      _ ("there is no figure “%s”; there are sheet, planform, side, stall, masses, summary, polar, "
         "greatest-lift, pressure"),
      arguments->figure);
  if (!gw_file_kind_of (arguments->output, &kind, &error))
    return usage_error ("%s", error->message);
  if (paper == NULL)
    return usage_error (_ ("there is no paper “%s”; there are A4, A3, Letter"), arguments->paper);
  if (!figure.is_of_sections && figure.kind == GW_FIGURE_SHEET && arguments->size == NULL)
    return write_figure (arguments, &figure, kind, paper->width, paper->height, TRUE);
  if (arguments->size != NULL && !parse_size (arguments->size, &width, &height))
    return usage_error (
      _ ("“%s” is no size; give width x height in points, 160x120 or more, as in 640x480"),
      arguments->size);

  return write_figure (arguments, &figure, kind, width, height, FALSE);
}

static int
run_report (Arguments *arguments)
{
  const Figure     figure = { .kind = GW_FIGURE_SHEET };
  const GwPaper   *paper = gw_paper_find (arguments->paper != NULL ? arguments->paper : "A4");
  g_autofree char *lower = NULL;

  if (arguments->output == NULL)
    return usage_error (_ ("report needs -o FILE.pdf"));
  if (paper == NULL)
    return usage_error (_ ("there is no paper “%s”; there are A4, A3, Letter"), arguments->paper);

  lower = g_ascii_strdown (arguments->output, -1);
  if (g_str_has_suffix (lower, ".html") || g_str_has_suffix (lower, ".csv"))
    return usage_error (
      _ ("this version writes the report as PDF alone; name a file that ends in .pdf"));
  if (!g_str_has_suffix (lower, ".pdf"))
    return usage_error (_ ("“%s” does not end in .pdf"), arguments->output);

  return write_figure (arguments, &figure, GW_FILE_PDF, paper->width, paper->height, TRUE);
}

/* The outline; what was smoothed lies over what was there. */
static int
draw_section (const GwSectionFile *section,
              const Arguments     *arguments)
{
  const gboolean        is_smooth = arguments->is_smooth;
  const GwOutlineFigure figure = { is_smooth ? &section->smooth : &section->outline,
                                   is_smooth ? &section->outline : NULL };
  g_autoptr (GError) error = NULL;
  GwDrawing *drawing;
  GwFileKind kind;
  double     width = 480.0, height = 160.0;
  gboolean   is_written;

  if (!gw_file_kind_of (arguments->output, &kind, &error))
    return usage_error ("%s", error->message);
  if (arguments->size != NULL && !parse_size (arguments->size, &width, &height))
    return usage_error (
      _ ("“%s” is no size; give width x height in points, 160x120 or more, as in 640x480"),
      arguments->size);

  drawing = gw_drawing_new (gw_theme_get (arguments->is_dark));
  gw_figure_outline (drawing, (GwBox){ 0.0, 0.0, width, height }, &figure);
  is_written =
    gw_export_drawing (drawing, width, height, section->name, kind, arguments->output, &error);
  gw_drawing_free (drawing);
  return is_written ? EXIT_FINE : study_error (error);
}

static int
run_section (Arguments *arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = study_file (arguments->rest[0]);
  g_autoptr (GwSectionFile) section = NULL;
  g_autofree char *text = NULL;

  if (arguments->output == NULL && (arguments->size != NULL || arguments->is_dark))
    return usage_error (_ ("section takes --size and --dark with -o FILE alone"));

  section = gw_section_file_open (file, &error);
  if (section == NULL)
    {
      g_printerr ("gramwright: %s: %s\n", arguments->rest[0], error->message);
      return EXIT_STUDY;
    }
  if (arguments->output != NULL)
    {
      const int status = draw_section (section, arguments);

      if (status != EXIT_FINE)
        return status;
    }

  text = arguments->is_json ? gw_section_file_json (section, arguments->is_smooth)
                            : gw_section_file_text (section, arguments->is_smooth);
  return print_text (text);
}

static const struct
{
  const char *name;
  int (*run) (Arguments *arguments);
  guint       n_files;
  const char *options; /* letters of those it takes: see refuse_options() */
} commands[] = {
  { "evaluate", run_evaluate, 1, "jOw" },
  { "draw", run_draw, 1, "ofOpsdu" },
  { "report", run_report, 1, "oOpdu" },
  { "check", run_check, 1, "" },
  { "fields", run_fields, 0, "j" },
  { "section", run_section, 1, "josdS" },
};

static const char *
refuse_options (const Arguments *arguments,
                const char      *taken)
{
  const struct
  {
    char        letter;
    gboolean    is_given;
    const char *name;
  } given[] = {
    { 'j', arguments->is_json, "--json" },
    { 'o', arguments->output != NULL, "--output" },
    { 'f', arguments->figure != NULL, "--figure" },
    { 'O', arguments->option != NULL, "--option" },
    { 'p', arguments->paper != NULL, "--paper" },
    { 's', arguments->size != NULL, "--size" },
    { 'd', arguments->is_dark, "--dark" },
    { 'u', arguments->units != NULL, "--units" },
    { 'w', arguments->why != NULL, "--why" },
    { 'S', arguments->is_smooth, "--smooth" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (given); i++)
    if (given[i].is_given && strchr (taken, given[i].letter) == NULL)
      return given[i].name;

  return NULL;
}

static int
run_command (guint      i,
             Arguments *arguments)
{
  const guint n = arguments->rest != NULL ? g_strv_length (arguments->rest) : 0;
  const char *refused = refuse_options (arguments, commands[i].options);

  if (refused != NULL)
    return usage_error (_ ("%s does not take %s"), commands[i].name, refused);
  if (n < commands[i].n_files)
    return usage_error (commands[i].run == run_section ? _ ("%s needs a file of coordinates")
                                                       : _ ("%s needs a study file"),
                        commands[i].name);
  if (n > commands[i].n_files)
    return usage_error (_ ("%s: one file too many: %s"), commands[i].name,
                        arguments->rest[commands[i].n_files]);

  return commands[i].run (arguments);
}

static int
parse_and_run (guint command,
               int   argc,
               char *argv[])
{
  Arguments arguments = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  int status;

  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &arguments.is_json, NULL, NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &arguments.output, NULL, NULL },
    { "figure", 0, 0, G_OPTION_ARG_STRING, &arguments.figure, NULL, NULL },
    { "option", 0, 0, G_OPTION_ARG_STRING, &arguments.option, NULL, NULL },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &arguments.paper, NULL, NULL },
    { "size", 0, 0, G_OPTION_ARG_STRING, &arguments.size, NULL, NULL },
    { "units", 0, 0, G_OPTION_ARG_STRING, &arguments.units, NULL, NULL },
    { "dark", 0, 0, G_OPTION_ARG_NONE, &arguments.is_dark, NULL, NULL },
    { "why", 0, 0, G_OPTION_ARG_STRING, &arguments.why, NULL, NULL },
    { "smooth", 0, 0, G_OPTION_ARG_NONE, &arguments.is_smooth, NULL, NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &arguments.rest, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (g_option_context_parse (context, &argc, &argv, &error))
    status = run_command (command, &arguments);
  else
    status = usage_error ("%s", error->message);

  g_strfreev (arguments.rest);
  g_free (arguments.output);
  g_free (arguments.figure);
  g_free (arguments.option);
  g_free (arguments.paper);
  g_free (arguments.size);
  g_free (arguments.units);
  g_free (arguments.why);
  return status;
}

static void
print_help (void)
{
  g_print (
    "%s\n",
    _ (
      "Usage:\n"
      "  gramwright [STUDY]                    open the desk\n"
      "  gramwright evaluate STUDY [--json]    compute all options and print them side by side\n"
      "  gramwright evaluate STUDY --why RESULT [--option ID]\n"
      "         where a result comes from: method, steps, inputs, band; as in --why stall_speed\n"
      "  gramwright draw STUDY --figure NAME -o FILE.{svg,png,pdf}\n"
      "         [--option ID] [--size WxH] [--paper A4|A3|Letter] [--dark] [--units LIST]\n"
      "         figures: sheet, planform, side, stall, masses, summary, polar, greatest-lift,\n"
      "         pressure; the last three are of the wing sections\n"
      "         units: mm, cm or in, g or oz, m/s, km/h, mph or kt, as in in,oz,mph\n"
      "  gramwright report STUDY -o FILE.pdf   write the sheet\n"
      "         [--option ID] [--paper A4|A3|Letter] [--dark] [--units LIST]\n"
      "  gramwright check STUDY                say what is wrong with a study, and where\n"
      "  gramwright fields [--json]            list every field of a study file\n"
      "  gramwright section FILE [--smooth] [--json] [-o FILE.{svg,png,pdf}]\n"
      "         [--size WxH] [--dark]\n"
      "         check and describe the outline in a file of coordinates, draw it; --smooth takes\n"
      "         out its waves, --json prints it as a section of a study\n"
      "  gramwright --help | --version\n"
      "\n"
      "Exit status: 0 fine, 1 the study has errors or a file cannot be read or written, 2 usage.\n"
      "Figures are estimates, no substitute for a structural test, a range check, a careful\n"
      "first flight, or local law."));
}

static int
open_desk (int   argc,
           char *argv[])
{
#if HAVE_DESK
  return gw_application_run (argc, argv);
#else
  g_printerr ("gramwright: %s\n",
              _ ("this program was built without its window; use one of the commands"));
  return EXIT_STUDY;
#endif
}

/* -1: it is none. */
static int
find_command (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (name, commands[i].name))
      return (int) i;

  return -1;
}

/* A lone word that is no file was meant as a command; files have an ending or a folder. */
static gboolean
is_misspelt (const char *word)
{
  return strpbrk (word, "./\\:") == NULL && !g_file_test (word, G_FILE_TEST_EXISTS);
}

int
main (int   argc,
      char *argv[])
{
  const char *locale_dir = g_getenv ("GRAMWRIGHT_LOCALEDIR");
  const int   command = argc > 1 ? find_command (argv[1]) : -1;

#if HAVE_DESK
  if (argc < 2 || (command < 0 && argv[1][0] != '-'))
    gw_application_apply_language ();
#endif
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, locale_dir != NULL ? locale_dir : LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  if (argc > 1 && (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h")))
    {
      print_help ();
      return EXIT_FINE;
    }
  if (argc > 1 && g_str_equal (argv[1], "--version"))
    {
      g_print ("gramwright " PACKAGE_VERSION "\n");
      return EXIT_FINE;
    }

  if (command >= 0)
    return parse_and_run ((guint) command, argc - 1, argv + 1);
  if (argc > 1 && argv[1][0] == '-')
    return usage_error (_ ("there is no option %s"), argv[1]);
  if (argc > 1 && is_misspelt (argv[1]))
    return usage_error (_ ("there is no command and no file “%s”"), argv[1]);

  return open_desk (argc, argv);
}
