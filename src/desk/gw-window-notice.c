/* gw-window-notice.c - what the main window says and asks about the file
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-leftover.h"
#include "desk/gw-window-private.h"

#define SHOW(self, title, reason, ...)                                               \
 G_STMT_START                                                                        \
 {                                                                                   \
  const GwNoticeAnswer answers_[] = { __VA_ARGS__ };                                 \
                                                                                     \
  gw_notice_show ((self)->notice, title, reason, G_N_ELEMENTS (answers_), answers_); \
 }                                                                                   \
 G_STMT_END

static void
show_close (GwWindow *self)
{
  GwHistory       *history = gw_document_get_history (self->document);
  const char      *last = gw_history_undo_name (history);
  g_autofree char *name = gw_document_get_name (self->document);
  g_autofree char *title = g_strdup_printf (_ ("%s has unsaved edits."), name);
  g_autofree char *reason =
    last != NULL ? g_strdup_printf (_ ("The last one: %s."), last) : NULL;

  SHOW (self, title, reason, { _ ("_Save"), "win.save-and-close", NULL },
        { _ ("_Close without saving"), "win.close-unsaved", NULL },
        { _ ("S_tay"), "win.stay", NULL });
}

static void
show_replace (GwWindow *self)
{
  g_autofree char *name = gw_document_get_name (self->document);
  g_autofree char *title =
    g_strdup_printf (_ ("%s was changed by another program and cannot be read now."), name);

  SHOW (self, title, _ ("The study was not saved; to save it replaces what the file holds."),
        { _ ("_Replace the file"), "win.replace", NULL },
        { _ ("Save _as…"), "win.save-as", NULL }, { _ ("S_tay"), "win.stay", NULL });
}

static void
show_newer (GwWindow *self)
{
  g_autofree char *name = gw_document_get_name (self->document);
  g_autofree char *title =
    g_strdup_printf (_ ("%s was changed by another program, and you have unsaved edits."), name);

  SHOW (self, title,
        _ ("Read anew, it shows that change, and undo brings your edits back. Keep yours, and the "
           "next save replaces that change."),
        { _ ("_Read the file anew"), "win.reload", NULL },
        { _ ("_Keep mine"), "win.keep-mine", NULL });
}

static void
show_gone (GwWindow *self)
{
  g_autofree char *name = gw_document_get_name (self->document);
  g_autofree char *title = g_strdup_printf (_ ("%s is no longer where it was."), name);

  SHOW (self, title, _ ("The study is still here; to save it writes the file again."),
        { _ ("_Save"), "win.save", NULL }, { _ ("Save _as…"), "win.save-as", NULL });
}

/* Those that a start page shows need no notice. */
static GwLeftover *
first_leftover (GwWindow *self)
{
  GwApplication *application = _gw_window_get_application (self);

  if (application == NULL || _gw_window_get_evaluation (self) == NULL ||
      gw_application_are_leftovers_told (application))
    return NULL;

  return g_list_model_get_item (gw_application_get_leftovers (application), 0);
}

static void
show_leftover (GwWindow   *self,
               GwLeftover *leftover)
{
  g_autofree char *title = gw_leftover_text (leftover);
  const char      *path = gw_leftover_get_path (leftover);

  if (gw_leftover_get_problem (leftover) != NULL)
    SHOW (self, title, gw_leftover_get_problem (leftover),
          { _ ("_Let it go"), "win.let-go", path }, { _ ("La_ter"), "win.later", NULL });
  else
    SHOW (self, title, NULL, { _ ("_Bring it back"), "win.bring-back", path },
          { _ ("_Let it go"), "win.let-go", path }, { _ ("La_ter"), "win.later", NULL });
}

static void
show_file (GwWindow *self)
{
  g_autoptr (GwLeftover) leftover = NULL;
  const GwOnDisk on_disk =
    self->document != NULL ? gw_document_get_on_disk (self->document) : GW_ON_DISK_SAME;

  switch (on_disk)
    {
    case GW_ON_DISK_NEWER:
      show_newer (self);
      return;
    case GW_ON_DISK_GONE:
      show_gone (self);
      return;
    case GW_ON_DISK_SAME:
    case GW_ON_DISK_BROKEN: /* the bar of the problem says it */
    default:
      break;
    }

  leftover = first_leftover (self);
  if (leftover != NULL)
    show_leftover (self, leftover);
  else
    gw_notice_hide (self->notice);
}

static void
forget_question (GwWindow *self)
{
  self->ask = GW_ASK_NOTHING;
  g_clear_pointer (&self->asked, gw_study_unref);
  g_clear_pointer (&self->told, g_free);
  g_clear_pointer (&self->told_reason, g_free);
}

/* Saved, undone or edited on since it was asked. */
static gboolean
is_over (GwWindow *self)
{
  switch (self->ask)
    {
    case GW_ASK_CLOSE:
      return !_gw_window_is_edited (self) || gw_document_get_study (self->document) != self->asked;
    case GW_ASK_REPLACE:
      return self->document == NULL ||
             gw_document_get_on_disk (self->document) != GW_ON_DISK_BROKEN;
    case GW_TELL_SAVE:
      return !_gw_window_is_edited (self);
    case GW_ASK_NOTHING:
    case GW_TELL:
    default:
      return FALSE;
    }
}

void
_gw_window_update_notice (GwWindow *self)
{
  if (is_over (self))
    forget_question (self);

  switch (self->ask)
    {
    case GW_ASK_CLOSE:
      show_close (self);
      break;
    case GW_ASK_REPLACE:
      show_replace (self);
      break;
    case GW_TELL:
      SHOW (self, self->told, self->told_reason, { _ ("Dis_miss"), "win.stay", NULL });
      break;
    case GW_TELL_SAVE:
      SHOW (self, self->told, self->told_reason, { _ ("_Try again"), "win.save", NULL },
            { _ ("Save _as…"), "win.save-as", NULL }, { _ ("Dis_miss"), "win.stay", NULL });
      break;
    case GW_ASK_NOTHING:
    default:
      show_file (self);
    }
}

void
_gw_window_ask (GwWindow *self,
                GwAsk     ask)
{
  forget_question (self);
  self->ask = ask;
  if (self->document != NULL)
    self->asked = gw_study_ref (gw_document_get_study (self->document));
  _gw_window_update_notice (self);
  gw_notice_ask (self->notice);
}

void
_gw_window_tell (GwWindow   *self,
                 GwAsk       ask,
                 const char *title,
                 const char *reason)
{
  forget_question (self);
  self->ask = ask;
  self->told = g_strdup (title);
  self->told_reason = g_strdup (reason);
  _gw_window_update_notice (self);
}

void
_gw_window_stop_asking (GwWindow *self)
{
  forget_question (self);
  _gw_window_update_notice (self);
}

/* One that stays stops the program from ending. */
static void
stay_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  _gw_window_stop_asking (GW_WINDOW (widget));
  gw_application_stop_quitting (_gw_window_get_application (GW_WINDOW (widget)));
}

static void
keep_mine_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  gw_document_keep_mine (GW_WINDOW (widget)->document);
}

static GwLeftover *
leftover_of (GwWindow *self,
             GVariant *parameter)
{
  return gw_leftover_find (gw_application_get_leftovers (_gw_window_get_application (self)),
                           g_variant_get_string (parameter, NULL));
}

static void
bring_back_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);
  g_autoptr (GwLeftover) leftover = leftover_of (self, parameter);
  g_autoptr (GError) error = NULL;

  if (leftover != NULL && !gw_application_bring_back (_gw_window_get_application (self), leftover,
                                                      GTK_WINDOW (self), &error))
    _gw_window_tell (self, GW_TELL, _ ("The unsaved work was not brought back."), error->message);
}

static void
let_go_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);
  g_autoptr (GwLeftover) leftover = leftover_of (self, parameter);

  if (leftover != NULL)
    gw_application_let_go (_gw_window_get_application (self), leftover);
}

static void
later_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  gw_application_tell_leftovers (_gw_window_get_application (GW_WINDOW (widget)));
}

void
_gw_window_install_notice_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.stay", NULL, stay_cb);
  gtk_widget_class_install_action (widget_class, "win.keep-mine", NULL, keep_mine_cb);
  gtk_widget_class_install_action (widget_class, "win.bring-back", "s", bring_back_cb);
  gtk_widget_class_install_action (widget_class, "win.let-go", "s", let_go_cb);
  gtk_widget_class_install_action (widget_class, "win.later", NULL, later_cb);
}

void
_gw_window_dispose_notice (GwWindow *self)
{
  g_clear_pointer (&self->asked, gw_study_unref);
  g_clear_pointer (&self->told, g_free);
  g_clear_pointer (&self->told_reason, g_free);
}
