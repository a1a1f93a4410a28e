/* test-record.c - the field tables, and what goes through them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "sample-study.h"
#include "study/gw-study.h"

static void
check_number (const GwField *field)
{
  const GwUnit *unit = gw_quantity_unit (field->quantity);

  if (!g_str_has_suffix (field->key, unit->suffix))
    g_error ("%s does not end in its unit %s", field->key, unit->suffix);
  g_assert_cmpfloat (field->least, <, field->most + 1e-12);
  if (!isnan (field->standard))
    {
      g_assert_cmpfloat (field->standard, >=, field->least);
      g_assert_cmpfloat (field->standard, <=, field->most);
    }
}

/* Every row can be shown to a person and every number is in its own bounds. */
static void
test_tables (void)
{
  g_autoptr (GPtrArray) types = gw_record_types (gw_study_root_type ());

  g_assert_cmpuint (types->len, >, 20);
  g_ptr_array_add (types, (gpointer) gw_study_catalogue_type ());
  for (guint t = 0; t < types->len; t++)
    {
      const GwRecordType *type = g_ptr_array_index (types, t);

      for (guint i = 0; i < type->n_fields; i++)
        {
          const GwField *field = &type->fields[i];

          g_assert_cmpstr (field->label, !=, "");
          g_assert_cmpstr (field->help, !=, "");
          g_assert_true (gw_record_type_field (type, field->key) == field);
          g_assert_cmpuint (field->offset, <, type->size);
          if (field->kind == GW_FIELD_NUMBER)
            check_number (field);
          if (field->kind == GW_FIELD_ID)
            g_assert_cmpuint (i, ==, 0);
          if (field->kind == GW_FIELD_REF)
            g_assert_true (
              gw_record_type_field (gw_study_root_type (), field->collection) != NULL ||
              gw_record_type_field (gw_study_catalogue_type (), field->collection) != NULL);
        }
    }
}

static void
test_units_round_trip (void)
{
  for (guint q = 0; q < GW_N_QUANTITIES; q++)
    for (int trial = 0; trial < 100; trial++)
      {
        const double value = g_test_rand_double_range (-1e4, 1e4);
        const double back =
          gw_quantity_from_si ((GwQuantity) q, gw_quantity_to_si ((GwQuantity) q, value));

        /* Celsius loses the last bits to the 273.15 added and taken off. */
        g_assert_cmpfloat_with_epsilon (back, value, 1e-11 * (fabs (value) + 300.0));
      }

  g_assert_cmpfloat_with_epsilon (gw_quantity_to_si (GW_MM, 245.0), 0.245, 1e-15);
  g_assert_cmpfloat_with_epsilon (gw_quantity_to_si (GW_C, 15.0), 288.15, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_quantity_to_si (GW_HPA, 1013.25), 101325.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (gw_quantity_to_si (GW_DEG, 180.0), G_PI, 1e-15);
  g_assert_cmpfloat_with_epsilon (gw_quantity_from_si (GW_G_DM2, 3.0), 30.0, 1e-12); /* 3 kg/m2 */
}

/* The shortest text of any double reads back as the same double. */
static void
test_number_text (void)
{
  const struct
  {
    double      value;
    const char *text;
  } cases[] = {
    { 0.1, "0.1" },
    { 0.0, "0" },
    { -0.0, "0" },
    { 1.0 / 3.0, "0.3333333333333333" },
    { 1e5, "100000" },
    { 0.045, "0.045" },
    { 1e83, "1e+83" },
    { -12.5, "-12.5" },
    { 1e-7, "1e-07" },
    { 123456789.25, "123456789.25" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = gw_number_text (cases[i].value);

      g_assert_cmpstr (text, ==, cases[i].text);
    }

  for (int trial = 0; trial < 2000; trial++)
    {
      const double value =
        ldexp (g_test_rand_double_range (-1.0, 1.0), g_test_rand_int_range (-60, 60));
      g_autofree char *text = gw_number_text (value);

      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, value);
    }
}

/* A two-piece normal: the median at 0, the percentiles at their deviates, never falling. */
static void
test_number_at (void)
{
  GwNumber number = { 0 };
  double   last = -INFINITY;

  gw_number_set_range (&number, 10.0, 12.0, 18.0);
  g_assert_cmpfloat (gw_number_at (&number, 0.0), ==, 12.0);
  g_assert_cmpfloat_with_epsilon (gw_number_at (&number, GW_Z90), 18.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_number_at (&number, -GW_Z90), 10.0, 1e-12);
  for (double z = -4.0; z <= 4.0; z += 0.1)
    {
      g_assert_cmpfloat (gw_number_at (&number, z), >, last);
      last = gw_number_at (&number, z);
    }

  /* One standard deviation is the spread. */
  gw_number_set_spread (&number, 5.0, 0.5);
  g_assert_cmpfloat_with_epsilon (gw_number_at (&number, 1.0), 5.5, 1e-12);
  g_assert_true (gw_number_is_uncertain (&number));
  gw_number_set (&number, 5.0);
  g_assert_false (gw_number_is_uncertain (&number));
}

static GwStudy *
sample (void)
{
  GwStudy *study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  g_assert_nonnull (study);
  return study;
}

static void
test_find (void)
{
  static const char *const nowhere[] = {
    "",
    "nothing",
    "surfaces/wing",
    "surfaces/1/x_mm",
    "surfaces/wing/stations/0/chord_mm",
    "surfaces/wing/stations/3/chord_mm",
    "legs/1/mass_g",
    "targets/mass_g/value",
    "name/x",
  };
  g_autoptr (GwStudy) study = sample ();
  const GwField *field = NULL;
  GwRecord *record = gw_record_find (&study->record, "surfaces/wing/stations/2/chord_mm", &field);

  g_assert_nonnull (record);
  g_assert_cmpstr (field->key, ==, "chord_mm");
  g_assert_cmpfloat (((GwStudyStation *) record)->chord_mm.value, ==, 200.0);
  g_assert_nonnull (gw_record_find (&study->record, "targets/mass_g", &field));
  g_assert_nonnull (gw_record_find (&study->record, "name", &field));

  for (guint i = 0; i < G_N_ELEMENTS (nowhere); i++)
    g_assert_null (gw_record_find (&study->record, nowhere[i], &field));
}

static JsonNode *
number_node (double value)
{
  return json_node_init_double (json_node_alloc (), value);
}

static void
test_edit (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) chord = number_node (210.0);
  g_autoptr (JsonNode) bad = number_node (-1.0);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited =
    gw_study_edit (study, "surfaces/wing/stations/1/chord_mm", chord, &error);
  g_autofree char *before = NULL;

  /* The edit is a new study; who holds the old one sees nothing. */
  g_assert_no_error (error);
  before = gw_study_text (study);
  g_assert_cmpstr (before, ==, SAMPLE_STUDY);
  g_assert_false (gw_record_equal (&study->record, &edited->record));

  g_assert_null (gw_study_edit (study, "surfaces/wing/stations/1/chord_mm", bad, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_clear_error (&error);
  g_assert_null (gw_study_edit (study, "surfaces/wing/stations/1/chord_mm", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_clear_error (&error);

  /* Taken back to its standard, the field is not in the file any more. */
  g_clear_pointer (&edited, gw_study_unref);
  edited = gw_study_edit (study, "surfaces/wing/x_mm", NULL, &error);
  g_assert_no_error (error);
  g_free (before);
  before = gw_study_text (edited);
  g_assert_null (strstr (before, "\"x_mm\": 100"));
}

/* What an edit makes must be what its file says: refused here or the same when read back. */
static const struct
{
  const char *name, *path, *value;
  const char *says; /* stands in the text then, or in the message if it is refused */
} edits[] = {
  { "part-left-out", "day/elevation_m", "120", "\"day\": { \"elevation_m\": 120 }" },
  { "deep-part", "builds/1/hot_wired_core/edge_g_m", "3",
    "\"hot_wired_core\": { \"edge_g_m\": 3 }" },
  { "plain-number", "equipment/battery/mass_g", "200", "\"mass_g\": 200," },
  { "origin", "equipment/battery/mass_g", "{\"value\": 200, \"origin\": \"weighed\"}",
    "\"mass_g\": { \"value\": 200, \"origin\": \"weighed\" }," },
  { "empty-name", "name", "\"\"", "\"name\": \"\"" },
  { "id-taken", "options/thin/id", "\"thick\"", "used twice" },
  { "id-taken-in-an-option", "options/thick/changes",
    "{\"equipment\": [{\"id\": \"battery\", \"mass_g\": 1}, {\"id\": \"b\", \"mass_g\": 1}],"
    " \"equipment/b/id\": \"battery\"}",
    "used twice" },
  { "low-field", "day/elevation_m", "-400", "\"elevation_m\": -400" },
  { "no-air", "day", "{\"elevation_m\": -400, \"pressure_hpa\": 1080}", "day: elevation" },
};

static void
test_edit_reads_back (gconstpointer data)
{
  const guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) value = json_from_string (edits[i].value, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited = gw_study_edit (study, edits[i].path, value, &error);
  g_autoptr (GwStudy) back = NULL;
  g_autofree char *text = edited != NULL ? gw_study_text (edited) : g_strdup (error->message);

  if (strstr (text, edits[i].says) == NULL)
    g_error ("“%s” does not say “%s”", text, edits[i].says);
  if (edited == NULL)
    return;
  back = gw_study_parse (text, strlen (text), NULL, &error);
  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&edited->record, &back->record));
}

static const char *
battery_source (const GwStudy *study)
{
  return ((GwStudyItem *) g_ptr_array_index (study->equipment, 0))->mass_g.source;
}

/* A citation goes with the value it was given for. */
static void
test_edit_drops_the_source (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) cited = json_from_string ("{\"value\": 9, \"source\": \"A\"}", NULL);
  g_autoptr (JsonNode) other = json_from_string ("{\"value\": 8, \"source\": \"B\"}", NULL);
  g_autoptr (JsonNode) plain = number_node (7.0);
  g_autoptr (GwStudy) first = gw_study_edit (study, "equipment/battery/mass_g", cited, NULL);
  g_autoptr (GwStudy) second = gw_study_edit (first, "equipment/battery/mass_g", other, NULL);
  g_autoptr (GwStudy) third = gw_study_edit (second, "equipment/battery/mass_g", plain, NULL);

  g_assert_cmpstr (battery_source (first), ==, "A");
  g_assert_cmpstr (battery_source (second), ==, "B");
  g_assert_null (battery_source (third));
}

static void
count_numbers (const char    *path,
               GwRecord      *record,
               const GwField *field,
               gpointer       data)
{
  const GwField *found = NULL;

  /* Each path leads back to its own field. */
  if (field->kind == GW_FIELD_NUMBER)
    {
      g_assert_true (gw_record_find (((gpointer *) data)[0], path, &found) == record);
      g_assert_true (found == field);
      (*(guint *) ((gpointer *) data)[1])++;
    }
}

static void
test_each (void)
{
  g_autoptr (GwStudy) study = sample ();
  guint    n = 0;
  gpointer data[] = { study, &n };

  gw_record_each (&study->record, "", count_numbers, data);
  g_assert_cmpuint (n, >, 50);
}

static gpointer
copy_often (gpointer study)
{
  for (guint i = 0; i < 2000; i++)
    {
      g_autoptr (GwStudy) copy = gw_study_copy (study);

      g_assert_true (gw_record_equal (&copy->record, &((GwStudy *) study)->record));
    }
  return NULL;
}

/* An edit copies the study that a thread is computing, which copies it as well. */
static void
test_copied_by_threads (void)
{
  g_autofree char *text = sample_replace (
    SAMPLE_STUDY, "\"format\": 1,", "\"format\": 1, \"later\": { \"list\": [1, \"two\", null] },");
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, NULL);
  g_autofree char *before = gw_study_text (study), *after = NULL;
  GThread         *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("copy", copy_often, study);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
  after = gw_study_text (study);
  g_assert_cmpstr (after, ==, before);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/record/tables", test_tables);
  g_test_add_func ("/study/quantity/round-trip", test_units_round_trip);
  g_test_add_func ("/study/number/text", test_number_text);
  g_test_add_func ("/study/number/at", test_number_at);
  g_test_add_func ("/study/record/find", test_find);
  g_test_add_func ("/study/record/edit", test_edit);
  for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
    {
      g_autofree char *path = g_strdup_printf ("/study/record/edit-reads-back/%s", edits[i].name);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_edit_reads_back);
    }
  g_test_add_func ("/study/record/edit-drops-the-source", test_edit_drops_the_source);
  g_test_add_func ("/study/record/each", test_each);

  g_test_add_func ("/study/record/copied-by-threads", test_copied_by_threads);

  return g_test_run ();
}
