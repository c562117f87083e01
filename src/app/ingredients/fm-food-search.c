/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-search.c - an entry that finds foods of the dataset and the developer's own entries */
#include "app/ingredients/fm-food-search.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/ingredients/fm-food-list.h"
#include "app/ingredients/fm-own-removal.h"
#include "app/widgets/fm-widget.h"

struct _FmFoodSearch {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkSearchEntry *entry;
  GtkLabel *status_label;
  FmFoodList *list;

  FmSession *session;
  GCancellable *cancellable; /* of the latest search */
  FmFoodFound *shown;        /* what the list shows */
  gboolean told_missing;     /* that there is no dataset was said */
  gboolean take_first;       /* Enter came before the hits did */
};

G_DEFINE_FINAL_TYPE (FmFoodSearch, fm_food_search, GTK_TYPE_WIDGET)

enum {
  CHOSEN,
  OWN_ENTRY,
  PASTED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
say (FmFoodSearch *self, const char *text)
{
  gtk_label_set_text (self->status_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->status_label), text != NULL);
}

/* @found: (transfer full) (nullable) */
static void
show_found (FmFoodSearch *self, FmFoodFound *found)
{
  fm_food_list_show (self->list, found);
  fm_food_found_free (self->shown);
  self->shown = found;
}

static void
clear_results (FmFoodSearch *self)
{
  show_found (self, NULL);
  gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  say (self, NULL);
}

static void
highlighted_cb (FmFoodSearch *self, const char *title)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  title, -1);
}

static void
take_ingredient (FmFoodSearch *self, FmIngredient *ingredient)
{
  g_autoptr (FmIngredient) keep = fm_ingredient_ref (ingredient);

  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  g_signal_emit (self, signals[CHOSEN], 0, keep);
}

static void
food_loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmFoodSearch *self = FM_FOOD_SEARCH (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmIngredient) ingredient = fm_store_task_finish (result, &error);

  if (self->session == NULL)
    return;
  if (ingredient == NULL)
    fm_session_failure (self->session, error);
  else
    take_ingredient (self, ingredient);
}

static void
food_taken_cb (FmFoodSearch *self, const FmFoodHit *hit)
{
  fm_food_load (self, fm_session_get_notebook (self->session), hit, food_loaded_cb);
}

static void
own_entry_cb (FmFoodSearch *self)
{
  g_signal_emit (self, signals[OWN_ENTRY], 0, gtk_editable_get_text (GTK_EDITABLE (self->entry)));
}

static void
tell_missing (FmFoodSearch *self)
{
  if (self->shown->foods_error == NULL || self->told_missing)
    return;
  self->told_missing = TRUE;
  fm_session_failure (self->session, self->shown->foods_error);
}

static void
search_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmFoodSearch *self = FM_FOOD_SEARCH (source);
  g_autoptr (GError) error = NULL;
  FmFoodFound *found = fm_store_task_finish (result, &error);
  g_autofree char *text = NULL;

  if (found == NULL) {
    if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      say (self, error->message);
    return;
  }
  show_found (self, found);
  text = fm_food_found_text (found);
  say (self, text);
  tell_missing (self);
  if (self->take_first) {
    self->take_first = FALSE;
    fm_food_list_take (self->list);
  }
}

static void
text_changed_cb (FmFoodSearch *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  self->take_first = FALSE;
  g_strstrip (text);
  if (text[0] == '\0' || self->session == NULL) {
    clear_results (self);
    return;
  }
  self->cancellable = g_cancellable_new ();
  fm_food_find (self, fm_session_get_notebook (self->session), text, self->cancellable,
                search_done_cb);
}

static void
activate_cb (FmFoodSearch *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  g_strstrip (text);
  if (self->shown != NULL && g_str_equal (self->shown->text, text))
    fm_food_list_take (self->list);
  else
    self->take_first = text[0] != '\0';
}

static void
stop_cb (FmFoodSearch *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
}

static void
paste_text (FmFoodSearch *self, const char *text)
{
  int position = gtk_editable_get_position (GTK_EDITABLE (self->entry));
  gboolean taken = FALSE;

  if (strpbrk (text, "\n\t") != NULL)
    g_signal_emit (self, signals[PASTED], 0, text, &taken);
  if (taken)
    return;
  gtk_editable_delete_selection (GTK_EDITABLE (self->entry));
  position = gtk_editable_get_position (GTK_EDITABLE (self->entry));
  gtk_editable_insert_text (GTK_EDITABLE (self->entry), text, (int)strcspn (text, "\n"), &position);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), position);
}

static void
text_read_cb (GObject *clipboard, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmFoodSearch) self = data;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);

  if (text != NULL && self->session != NULL)
    paste_text (self, text);
}

/* With nothing typed Ctrl+Z means the formula, not the words that were searched for before. */
static gboolean
undo_of_window (FmFoodSearch *self, guint keyval)
{
  const char *action = NULL;

  if (*gtk_editable_get_text (GTK_EDITABLE (self->entry)) != '\0')
    return GDK_EVENT_PROPAGATE;
  if (keyval == GDK_KEY_z)
    action = "win.undo";
  else if (keyval == GDK_KEY_Z || keyval == GDK_KEY_y)
    action = "win.redo";
  return action != NULL && gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
}

/* What is found now is another list; why an entry stays is said instead. */
static void
removal_settled (GtkWidget *widget, const char *failure)
{
  FmFoodSearch *self = FM_FOOD_SEARCH (widget);

  if (self->session == NULL)
    return;
  if (failure != NULL)
    say (self, failure);
  else
    text_changed_cb (self);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmFoodSearch *self = FM_FOOD_SEARCH (widget);
  const guint index = g_variant_get_uint32 (parameter);

  if (index < fm_food_found_n_own (self->shown) && fm_own_removal_is_offered (widget))
    fm_own_removal_start (widget, self->session, g_ptr_array_index (self->shown->own, index),
                          removal_settled);
}

/* At the end of the text the key has no word to delete. */
static gboolean
remove_highlighted (FmFoodSearch *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  const int own = fm_food_list_get_own (self->list);

  return own >= 0 &&
         gtk_editable_get_position (GTK_EDITABLE (self->entry)) == g_utf8_strlen (text, -1) &&
         gtk_widget_activate_action (GTK_WIDGET (self), "food.remove", "u", (guint)own);
}

/* The cursor stays in the entry; the arrows move the highlight. */
static gboolean
key_cb (FmFoodSearch *self, guint keyval, guint keycode, GdkModifierType state)
{
  if ((state & GDK_CONTROL_MASK) != 0 && keyval == GDK_KEY_v) {
    gdk_clipboard_read_text_async (gtk_widget_get_clipboard (GTK_WIDGET (self)), NULL, text_read_cb,
                                   g_object_ref (self));
    return GDK_EVENT_STOP;
  }
  if ((state & GDK_CONTROL_MASK) != 0 && undo_of_window (self, keyval))
    return GDK_EVENT_STOP;
  if ((state & GDK_CONTROL_MASK) != 0 && keyval == GDK_KEY_Delete)
    return remove_highlighted (self);
  if (keyval != GDK_KEY_Down && keyval != GDK_KEY_Up)
    return GDK_EVENT_PROPAGATE;
  return fm_food_list_move (self->list, keyval == GDK_KEY_Down ? 1 : -1);
}

static gboolean
fm_food_search_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_FOOD_SEARCH (widget)->entry));
}

static void
fm_food_search_dispose (GObject *object)
{
  FmFoodSearch *self = FM_FOOD_SEARCH (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->session);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FOOD_SEARCH);
  g_clear_pointer (&self->shown, fm_food_found_free);
  G_OBJECT_CLASS (fm_food_search_parent_class)->dispose (object);
}

static void
fm_food_search_class_init (FmFoodSearchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_food_search_dispose;
  g_type_ensure (FM_TYPE_FOOD_LIST);
  widget_class->focus = fm_widget_pass_focus;
  widget_class->grab_focus = fm_food_search_grab_focus;
  signals[CHOSEN] = g_signal_new ("chosen", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[OWN_ENTRY] = g_signal_new ("own-entry", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[PASTED] = g_signal_new ("pasted", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0,
                                  g_signal_accumulator_true_handled, NULL, NULL, G_TYPE_BOOLEAN, 1,
                                  G_TYPE_STRING);
  gtk_widget_class_install_action (widget_class, "food.remove", "u", remove_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/ingredients/fm-food-search.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, box);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, entry);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, status_label);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, list);
  gtk_widget_class_bind_template_callback (widget_class, text_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, highlighted_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_ingredient);
  gtk_widget_class_bind_template_callback (widget_class, food_taken_cb);
}

static void
fm_food_search_init (FmFoodSearch *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
}

void
fm_food_search_set_session (FmFoodSearch *self, FmSession *session)
{
  g_return_if_fail (FM_IS_FOOD_SEARCH (self));
  g_set_object (&self->session, session);
}

void
fm_food_search_look_for (FmFoodSearch *self, const char *text)
{
  g_return_if_fail (FM_IS_FOOD_SEARCH (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}
