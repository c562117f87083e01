/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-search.c - an entry that finds foods of the dataset and the developer's own entries */
#include "app/ingredients/fm-food-search.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/ingredients/fm-food-row.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"
#include "store/fm-food-store.h"
#include "store/fm-names.h"
#include "store/fm-versions.h"

#define MAX_HITS 30
#define MAX_LIST_HEIGHT 280

/* What a search thread needs and gives back; it never touches the widget. */
typedef struct {
  char *text;
  GPtrArray *own;      /* FmIngredient */
  GPtrArray *hits;     /* FmFoodHit; NULL when the dataset is missing */
  char *read_as;       /* the words searched for; NULL: as typed */
  GError *foods_error; /* why it is */
} Search;

struct _FmFoodSearch {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkSearchEntry *entry;
  GtkLabel *status_label;
  GtkScrolledWindow *scroller;
  GtkListBox *list;

  FmSession *session;
  GCancellable *cancellable; /* of the latest search */
  Search *shown;             /* what the list shows */
  guint show_highlight_id;   /* tick that scrolls to the highlight */
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
search_free (Search *search)
{
  g_free (search->text);
  g_free (search->read_as);
  g_clear_pointer (&search->own, g_ptr_array_unref);
  g_clear_pointer (&search->hits, g_ptr_array_unref);
  g_clear_error (&search->foods_error);
  g_free (search);
}

static guint
n_own (FmFoodSearch *self)
{
  return self->shown != NULL && self->shown->own != NULL ? self->shown->own->len : 0;
}

static guint
n_hits (FmFoodSearch *self)
{
  return self->shown != NULL && self->shown->hits != NULL ? self->shown->hits->len : 0;
}

static void
say (FmFoodSearch *self, const char *text)
{
  gtk_label_set_text (self->status_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->status_label), text != NULL);
}

/* Ready-made hits stand behind the others. */
static guint
n_fresh (FmFoodSearch *self)
{
  guint n = 0;

  while (n < n_hits (self) &&
         !((const FmFoodHit *)g_ptr_array_index (self->shown->hits, n))->is_ready_made)
    n++;
  return n;
}

/* The page scrolls too and grants minimum heights only, so the list asks for what it needs. */
static void
fit_list (FmFoodSearch *self)
{
  const int width = gtk_widget_get_width (self->box);
  int height = 0;

  gtk_widget_measure (GTK_WIDGET (self->list), GTK_ORIENTATION_VERTICAL, width > 0 ? width : -1,
                      &height, NULL, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (self->scroller, MIN (height, MAX_LIST_HEIGHT));
}

/* Rows just made have no place before the next frame. */
static gboolean
show_highlight_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  FmFoodSearch *self = data;
  GtkWidget *row = GTK_WIDGET (gtk_list_box_get_selected_row (self->list));
  graphene_rect_t bounds;

  if (row != NULL && gtk_widget_get_mapped (row)) {
    if (!gtk_widget_compute_bounds (row, widget, &bounds) || !(bounds.size.height > 0))
      return G_SOURCE_CONTINUE;
    gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (self->scroller),
                               (double)bounds.origin.y,
                               (double)(bounds.origin.y + bounds.size.height));
  }
  self->show_highlight_id = 0;
  return G_SOURCE_REMOVE;
}

static void
highlight (FmFoodSearch *self, GtkListBoxRow *row)
{
  if (row == NULL)
    return;
  gtk_list_box_select_row (self->list, row);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  fm_food_row_get_title (FM_FOOD_ROW (row)), -1);
  if (self->show_highlight_id == 0)
    self->show_highlight_id =
        gtk_widget_add_tick_callback (GTK_WIDGET (self->list), show_highlight_cb, self, NULL);
}

static void
append_foods (FmFoodSearch *self, guint from, guint to)
{
  for (guint i = from; i < to; i++)
    gtk_list_box_append (self->list,
                         fm_food_row_new_food (g_ptr_array_index (self->shown->hits, i), i));
}

static void
append_ready_made (FmFoodSearch *self)
{
  const guint first = n_fresh (self);

  if (first == n_hits (self))
    return;
  if (first + n_own (self) == 0)
    append_foods (self, first, n_hits (self));
  else
    gtk_list_box_append (self->list, fm_food_row_new_ready (n_hits (self) - first));
}

static void
show_rows (FmFoodSearch *self)
{
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, child);
  for (guint i = 0; i < n_own (self); i++)
    gtk_list_box_append (self->list,
                         fm_food_row_new_own (g_ptr_array_index (self->shown->own, i), i));
  append_foods (self, 0, n_fresh (self));
  append_ready_made (self);
  if (self->shown != NULL)
    gtk_list_box_append (self->list, fm_food_row_new_write (self->shown->text));
  gtk_widget_set_visible (GTK_WIDGET (self->scroller), self->shown != NULL);
  fit_list (self);
}

static void
show_from_top (FmFoodSearch *self)
{
  show_rows (self);
  highlight (self, gtk_list_box_get_row_at_index (self->list, 0));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

static void
clear_results (FmFoodSearch *self)
{
  g_clear_pointer (&self->shown, search_free);
  show_rows (self);
  gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  say (self, NULL);
}

static void
take_ingredient (FmFoodSearch *self, FmIngredient *ingredient)
{
  g_autoptr (FmIngredient) keep = fm_ingredient_ref (ingredient);

  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  g_signal_emit (self, signals[CHOSEN], 0, keep);
}

static gpointer
load_food (FmNotebook *notebook, gpointer ndb_no, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFoodStore) foods = fm_food_store_default (error);
  g_autoptr (FmFood) food = foods != NULL ? fm_food_store_get (foods, ndb_no, error) : NULL;

  return food != NULL ? fm_names_new_ingredient (notebook, food, error) : NULL;
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
take_food (FmFoodSearch *self, guint index)
{
  const FmFoodHit *hit = g_ptr_array_index (self->shown->hits, index);

  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = load_food,
      .free_result = (GDestroyNotify)fm_ingredient_unref,
      .data = g_strdup (hit->ndb_no),
      .free_data = g_free,
      .done = food_loaded_cb,
  });
}

/* Puts the ready-made foods where the row was that stood for them. */
static void
unfold (FmFoodSearch *self, GtkListBoxRow *row)
{
  const int at = gtk_list_box_row_get_index (row);
  const guint first = n_fresh (self);

  gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = first; i < n_hits (self); i++)
    gtk_list_box_insert (self->list,
                         fm_food_row_new_food (g_ptr_array_index (self->shown->hits, i), i),
                         at + (int)(i - first));
  fit_list (self);
  highlight (self, gtk_list_box_get_row_at_index (self->list, at));
}

static void
write_own (FmFoodSearch *self)
{
  g_signal_emit (self, signals[OWN_ENTRY], 0, gtk_editable_get_text (GTK_EDITABLE (self->entry)));
}

static void
take_row (FmFoodSearch *self, GtkListBoxRow *row)
{
  const guint index = fm_food_row_get_index (FM_FOOD_ROW (row));

  switch (fm_food_row_get_kind (FM_FOOD_ROW (row))) {
  case FM_FOOD_ROW_OWN:
    take_ingredient (self, g_ptr_array_index (self->shown->own, index));
    break;
  case FM_FOOD_ROW_FOOD:
    take_food (self, index);
    break;
  case FM_FOOD_ROW_READY:
    unfold (self, row);
    break;
  case FM_FOOD_ROW_WRITE:
    write_own (self);
    break;
  }
}

static void
take_highlighted (FmFoodSearch *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  if (row != NULL)
    take_row (self, row);
}

/* Without the dataset own entries are found all the same. */
static gpointer
run_search (FmNotebook *notebook, gpointer text, GCancellable *cancellable, GError **error)
{
  Search *search = g_new0 (Search, 1);
  g_autoptr (FmFoodStore) foods = fm_food_store_default (&search->foods_error);
  GError *failure = NULL;

  search->text = g_strdup (text);
  if (notebook != NULL)
    search->own = fm_ingredients_list (notebook, text, &failure);
  if (failure == NULL && foods != NULL)
    search->hits = fm_food_store_search (foods, text, MAX_HITS, &search->read_as, &failure);
  if (failure == NULL)
    return search;
  g_propagate_error (error, failure);
  search_free (search);
  return NULL;
}

static char *
count_text (FmFoodSearch *self)
{
  const guint n = n_own (self) + n_fresh (self);

  if (self->shown->hits == NULL)
    return g_strdup (_ ("The food dataset is missing, so only your own entries can be found."));
  if (n + n_hits (self) == 0)
    return g_strdup (_ ("Nothing found. Try fewer words, or write an own entry."));
  if (n == 0)
    return g_strdup (_ ("Only ready-made foods are found. Enter adds what is highlighted."));
  if (n_fresh (self) >= MAX_HITS)
    return g_strdup_printf (ngettext ("The best %u food. Enter adds what is highlighted.",
                                      "The best %u foods. Enter adds what is highlighted.", n),
                            n);
  return g_strdup_printf (ngettext ("%u food found. Enter adds what is highlighted.",
                                    "%u foods found. Enter adds what is highlighted.", n),
                          n);
}

static void
say_count (FmFoodSearch *self)
{
  g_autofree char *count = count_text (self);
  g_autofree char *text = NULL;

  /* Translators: the words searched for where they are not those typed, then what was found. */
  text = self->shown->read_as != NULL
             ? g_strdup_printf (_ ("Searched as “%s”. %s"), self->shown->read_as, count)
             : g_steal_pointer (&count);
  say (self, text);
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
  Search *search = fm_store_task_finish (result, &error);

  if (search == NULL) {
    if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      say (self, error->message);
    return;
  }
  g_clear_pointer (&self->shown, search_free);
  self->shown = search;
  show_from_top (self);
  say_count (self);
  tell_missing (self);
  if (self->take_first) {
    self->take_first = FALSE;
    take_highlighted (self);
  }
}

static void
start_search (FmFoodSearch *self, const char *text)
{
  self->cancellable = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = run_search,
      .free_result = (GDestroyNotify)search_free,
      .data = g_strdup (text),
      .free_data = g_free,
      .cancellable = self->cancellable,
      .done = search_done_cb,
  });
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
  if (text[0] == '\0' || self->session == NULL)
    clear_results (self);
  else
    start_search (self, text);
}

static void
activate_cb (FmFoodSearch *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  g_strstrip (text);
  if (self->shown != NULL && g_str_equal (self->shown->text, text))
    take_highlighted (self);
  else
    self->take_first = text[0] != '\0';
}

static void
stop_cb (FmFoodSearch *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
}

static void
own_entry_cb (FmFoodSearch *self)
{
  write_own (self);
}

static void
row_activated_cb (FmFoodSearch *self, GtkListBoxRow *row)
{
  take_row (self, row);
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

/* The cursor stays in the entry; the arrows move the highlight. */
static gboolean
key_cb (FmFoodSearch *self, guint keyval, guint keycode, GdkModifierType state)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  if ((state & GDK_CONTROL_MASK) != 0 && keyval == GDK_KEY_v) {
    gdk_clipboard_read_text_async (gtk_widget_get_clipboard (GTK_WIDGET (self)), NULL, text_read_cb,
                                   g_object_ref (self));
    return GDK_EVENT_STOP;
  }
  if ((state & GDK_CONTROL_MASK) != 0 && undo_of_window (self, keyval))
    return GDK_EVENT_STOP;
  if (row == NULL || (keyval != GDK_KEY_Down && keyval != GDK_KEY_Up))
    return GDK_EVENT_PROPAGATE;
  highlight (self,
             gtk_list_box_get_row_at_index (self->list, gtk_list_box_row_get_index (row) +
                                                            (keyval == GDK_KEY_Down ? 1 : -1)));
  return GDK_EVENT_STOP;
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
  g_clear_pointer (&self->shown, search_free);
  g_clear_object (&self->session);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FOOD_SEARCH);
  G_OBJECT_CLASS (fm_food_search_parent_class)->dispose (object);
}

static void
fm_food_search_class_init (FmFoodSearchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_food_search_dispose;
  widget_class->focus = fm_widget_pass_focus;
  widget_class->grab_focus = fm_food_search_grab_focus;
  signals[CHOSEN] = g_signal_new ("chosen", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[OWN_ENTRY] = g_signal_new ("own-entry", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[PASTED] = g_signal_new ("pasted", FM_TYPE_FOOD_SEARCH, G_SIGNAL_RUN_LAST, 0,
                                  g_signal_accumulator_true_handled, NULL, NULL, G_TYPE_BOOLEAN, 1,
                                  G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/ingredients/fm-food-search.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, box);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, entry);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, status_label);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmFoodSearch, list);
  gtk_widget_class_bind_template_callback (widget_class, text_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
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
