/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-picker.c - chooses versions or experiments: what to compare, or what to taste */
#include "app/compare/fm-compare-picker.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-choice.h"
#include "app/compare/fm-compare-load.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"

struct _FmComparePicker {
  AdwWindow parent_instance;

  GtkWidget *compare_button;
  GtkSearchEntry *search_entry;
  GtkLabel *state_label;
  GtkStack *stack;
  GtkListView *list_view;
  GtkLabel *nothing_label;

  GListStore *choices;
  GtkFilter *filter;
  GtkFilterListModel *filtered;
  GtkSorter *sorter;
  GtkSortListModel *sorted;
  GStrv words;       /* case folded, of the search */
  GPtrArray *chosen; /* FmCompareChoice, in the order of choosing */
  GStrv first_keys;
  FmVersionList *versions; /* (nullable): experiments only */
  GPtrArray *experiments;  /* FmCompareChoice, until they are shown */
  guint min;
  guint max;
  gboolean for_tasting; /* experiments only */
  char *refused;        /* (nullable): what was to be chosen when all were taken */
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (FmComparePicker, fm_compare_picker, ADW_TYPE_WINDOW)

enum {
  CHOSEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
matches (gpointer item, gpointer user_data)
{
  FmComparePicker *self = user_data;

  return self->words == NULL ||
         fm_compare_choice_matches (FM_COMPARE_CHOICE (item), (const char *const *)self->words);
}

/* Who is called so stands before who has it in date or reason: Enter takes the first. */
static int
compare_matches (gconstpointer a, gconstpointer b, gpointer user_data)
{
  FmComparePicker *self = user_data;
  const char *const *words = (const char *const *)self->words;

  if (words == NULL)
    return 0;
  return fm_compare_choice_is_called (FM_COMPARE_CHOICE ((gpointer)b), words) -
         fm_compare_choice_is_called (FM_COMPARE_CHOICE ((gpointer)a), words);
}

static char *
state_text (FmComparePicker *self, guint n)
{
  if (self->refused != NULL)
    return g_strdup_printf (
        ngettext ("“%s” was not added: %u is chosen, which is all that fits. Clear it to choose "
                  "another.",
                  "“%s” was not added: %u are chosen, which is all that fits. Clear one to choose "
                  "another.",
                  n),
        self->refused, n);
  if (n >= self->max)
    return g_strdup_printf (_ ("%u chosen, which is all that fits. Clear one to choose another."),
                            n);
  if (self->for_tasting)
    return g_strdup_printf (
        ngettext ("%u chosen, up to %u can be tasted.", "%u chosen, up to %u can be tasted.", n), n,
        self->max);
  if (n < self->min)
    return g_strdup_printf (
        ngettext ("%u chosen. Choose at least %u.", "%u chosen. Choose at least %u.", n), n,
        self->min);
  return g_strdup_printf (
      ngettext ("%u chosen, up to %u can be compared.", "%u chosen, up to %u can be compared.", n),
      n, self->max);
}

static void
update_state (FmComparePicker *self)
{
  const guint n = self->chosen->len;
  g_autofree char *text = state_text (self, n);

  gtk_label_set_text (self->state_label, text);
  fm_widget_set_class (GTK_WIDGET (self->state_label), "error", self->refused != NULL);
  fm_widget_set_class (GTK_WIDGET (self->state_label), "dim-label", self->refused == NULL);
  gtk_widget_set_sensitive (self->compare_button, n >= self->min && n <= self->max);
}

static void
update_page (FmComparePicker *self)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (self->filtered)) > 0) {
    gtk_stack_set_visible_child_name (self->stack, "list");
    return;
  }
  if (g_list_model_get_n_items (G_LIST_MODEL (self->choices)) > 0)
    gtk_label_set_text (self->nothing_label, _ ("Nothing is called that."));
  else if (self->for_tasting)
    gtk_label_set_text (self->nothing_label,
                        _ ("There is nothing to taste yet. Record the making of a version on the "
                           "Experiments page first."));
  else
    gtk_label_set_text (self->nothing_label,
                        _ ("There is nothing to compare yet. Make a blend first."));
  gtk_stack_set_visible_child_name (self->stack, "nothing");
}

static void
clear_choice (gpointer choice)
{
  fm_compare_choice_set_chosen (FM_COMPARE_CHOICE (choice), FALSE);
  g_object_unref (choice);
}

/* Its tick goes once the click is over: until then the box would keep it. */
static void
refuse (FmComparePicker *self, FmCompareChoice *choice)
{
  g_free (self->refused);
  self->refused = g_strdup (fm_compare_choice_get_title (choice));
  g_idle_add_once (clear_choice, g_object_ref (choice));
}

static void
choice_changed_cb (FmCompareChoice *choice, GParamSpec *pspec, gpointer user_data)
{
  FmComparePicker *self = FM_COMPARE_PICKER (user_data);

  if (!fm_compare_choice_get_chosen (choice)) {
    if (g_ptr_array_remove (self->chosen, choice))
      g_clear_pointer (&self->refused, g_free);
  } else if (self->chosen->len < self->max) {
    g_ptr_array_add (self->chosen, g_object_ref (choice));
  } else {
    refuse (self, choice);
  }
  update_state (self);
}

static void
setup_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *check = gtk_check_button_new ();
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = gtk_label_new (NULL);
  GtkWidget *subtitle = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (title), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_xalign (GTK_LABEL (subtitle), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (subtitle), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_add_css_class (subtitle, "caption");
  gtk_widget_add_css_class (subtitle, "dim-label");
  gtk_widget_set_margin_top (box, 6);
  gtk_widget_set_margin_bottom (box, 6);
  gtk_widget_set_margin_start (box, 12);
  gtk_widget_set_margin_end (box, 12);
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (texts), title);
  gtk_box_append (GTK_BOX (texts), subtitle);
  gtk_box_append (GTK_BOX (box), check);
  gtk_box_append (GTK_BOX (box), texts);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  FmCompareChoice *choice = gtk_list_item_get_item (list_item);
  GtkWidget *check = gtk_widget_get_first_child (gtk_list_item_get_child (list_item));
  GtkWidget *title = gtk_widget_get_first_child (gtk_widget_get_next_sibling (check));
  GtkWidget *subtitle = gtk_widget_get_next_sibling (title);
  const char *name = fm_compare_choice_get_title (choice);
  GBinding *binding = g_object_bind_property (choice, "chosen", check, "active",
                                              G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);

  gtk_label_set_text (GTK_LABEL (title), name);
  gtk_label_set_text (GTK_LABEL (subtitle), fm_compare_choice_get_subtitle (choice));
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (list_item), "binding", binding);
}

static void
unbind_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GBinding *binding = g_object_steal_data (G_OBJECT (list_item), "binding");

  if (binding != NULL)
    g_binding_unbind (binding);
}

static void
row_activated_cb (FmComparePicker *self, guint position)
{
  g_autoptr (FmCompareChoice) choice =
      g_list_model_get_item (G_LIST_MODEL (self->sorted), position);

  if (choice != NULL)
    fm_compare_choice_set_chosen (choice, !fm_compare_choice_get_chosen (choice));
}

static void
search_changed_cb (FmComparePicker *self)
{
  g_autofree char *folded =
      g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (self->search_entry)), -1);

  g_strfreev (self->words);
  self->words = g_strsplit_set (folded, " \t", -1);
  gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
  gtk_sorter_changed (self->sorter, GTK_SORTER_CHANGE_DIFFERENT);
  update_page (self);
}

/* Enter takes the first that is found, so that a selection can be typed. */
static void
search_activated_cb (FmComparePicker *self)
{
  search_changed_cb (self);
  if (gtk_editable_get_text (GTK_EDITABLE (self->search_entry))[0] == '\0')
    return;
  row_activated_cb (self, 0);
  gtk_editable_select_region (GTK_EDITABLE (self->search_entry), 0, -1);
}

static void
compare_clicked_cb (FmComparePicker *self)
{
  g_autoptr (GStrvBuilder) keys = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;

  for (guint i = 0; i < self->chosen->len; i++)
    g_strv_builder_add (keys, fm_compare_choice_get_key (g_ptr_array_index (self->chosen, i)));
  list = g_strv_builder_end (keys);
  g_signal_emit (self, signals[CHOSEN], 0, list);
  gtk_window_close (GTK_WINDOW (self));
}

static FmCompareChoice *
find_choice (GPtrArray *choices, const char *key)
{
  for (guint i = 0; i < choices->len; i++)
    if (g_strcmp0 (fm_compare_choice_get_key (g_ptr_array_index (choices, i)), key) == 0)
      return g_ptr_array_index (choices, i);
  return NULL;
}

/* Once versions and experiments are there. */
static void
show_choices (FmComparePicker *self)
{
  g_autoptr (GPtrArray) choices = NULL;

  if (self->experiments == NULL ||
      (self->versions != NULL && !fm_version_list_is_read (self->versions)))
    return;
  choices = self->versions != NULL ? fm_compare_choices_of_versions (self->versions)
                                   : g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_extend_and_steal (choices, g_steal_pointer (&self->experiments));
  for (guint i = 0; i < choices->len; i++)
    g_signal_connect_object (g_ptr_array_index (choices, i), "notify::chosen",
                             G_CALLBACK (choice_changed_cb), self, 0);
  for (guint i = 0; self->first_keys != NULL && self->first_keys[i] != NULL; i++) {
    FmCompareChoice *choice = find_choice (choices, self->first_keys[i]);

    if (choice != NULL)
      fm_compare_choice_set_chosen (choice, TRUE);
  }
  g_list_store_splice (self->choices, 0, 0, choices->pdata, choices->len);
  update_page (self);
}

static void
experiments_loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmComparePicker) self = FM_COMPARE_PICKER (user_data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) experiments = fm_compare_load_experiments_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->choices == NULL)
    return;
  if (experiments == NULL) {
    gtk_label_set_text (self->nothing_label, error->message);
    gtk_stack_set_visible_child_name (self->stack, "nothing");
    return;
  }
  self->experiments = g_steal_pointer (&experiments);
  show_choices (self);
}

static void
build_list (FmComparePicker *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkNoSelection *selection;

  g_signal_connect (factory, "setup", G_CALLBACK (setup_row_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_row_cb), NULL);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_row_cb), NULL);
  self->choices = g_list_store_new (FM_TYPE_COMPARE_CHOICE);
  self->filter = GTK_FILTER (gtk_custom_filter_new (matches, self, NULL));
  self->filtered = gtk_filter_list_model_new (G_LIST_MODEL (g_object_ref (self->choices)),
                                              g_object_ref (self->filter));
  self->sorter = GTK_SORTER (gtk_custom_sorter_new (compare_matches, self, NULL));
  self->sorted = gtk_sort_list_model_new (G_LIST_MODEL (g_object_ref (self->filtered)),
                                          g_object_ref (self->sorter));
  selection = gtk_no_selection_new (G_LIST_MODEL (g_object_ref (self->sorted)));
  gtk_list_view_set_factory (self->list_view, factory);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (selection));
  g_object_unref (factory);
  g_object_unref (selection);
}

static void
fm_compare_picker_dispose (GObject *object)
{
  FmComparePicker *self = FM_COMPARE_PICKER (object);

  g_cancellable_cancel (self->cancellable);
  if (self->list_view != NULL)
    gtk_list_view_set_model (self->list_view, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_COMPARE_PICKER);
  g_clear_object (&self->sorted);
  g_clear_object (&self->sorter);
  g_clear_object (&self->filtered);
  g_clear_object (&self->filter);
  g_clear_object (&self->choices);
  g_clear_object (&self->versions);
  g_clear_pointer (&self->experiments, g_ptr_array_unref);
  g_clear_pointer (&self->chosen, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_compare_picker_parent_class)->dispose (object);
}

static void
fm_compare_picker_finalize (GObject *object)
{
  FmComparePicker *self = FM_COMPARE_PICKER (object);

  g_clear_object (&self->cancellable);
  g_free (self->refused);
  g_strfreev (self->words);
  g_strfreev (self->first_keys);
  G_OBJECT_CLASS (fm_compare_picker_parent_class)->finalize (object);
}

static void
fm_compare_picker_class_init (FmComparePickerClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_compare_picker_dispose;
  object_class->finalize = fm_compare_picker_finalize;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRV);
  g_type_ensure (FM_TYPE_ONE_STOP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/compare/fm-compare-picker.ui");
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, compare_button);
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, search_entry);
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, state_label);
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, stack);
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, list_view);
  gtk_widget_class_bind_template_child (widget_class, FmComparePicker, nothing_label);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, compare_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_compare_picker_init (FmComparePicker *self)
{
  self->chosen = g_ptr_array_new_with_free_func (g_object_unref);
  self->cancellable = g_cancellable_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  build_list (self);
}

static FmComparePicker *
picker_new (GtkWindow *parent, const char *const *keys, guint min, guint max)
{
  FmComparePicker *self = g_object_new (FM_TYPE_COMPARE_PICKER, "transient-for", parent, NULL);

  self->first_keys = g_strdupv ((char **)keys);
  self->min = min;
  self->max = max;
  return self;
}

static void
load_choices (FmComparePicker *self, FmNotebook *notebook)
{
  update_state (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
  fm_compare_load_experiments_async (notebook, self->cancellable, experiments_loaded_cb,
                                     g_object_ref (self));
}

FmComparePicker *
fm_compare_picker_new (GtkWindow *parent, FmSession *session, const char *const *keys)
{
  FmComparePicker *self = picker_new (parent, keys, FM_COMPARE_MIN_ITEMS, FM_COMPARE_MAX_ITEMS);

  self->versions = fm_version_list_of (session);
  g_signal_connect_object (self->versions, "updated", G_CALLBACK (show_choices), self,
                           G_CONNECT_SWAPPED);
  load_choices (self, fm_session_get_notebook (session));
  return self;
}

FmComparePicker *
fm_compare_picker_new_for_tasting (GtkWindow *parent,
                                   FmNotebook *notebook,
                                   const char *const *keys,
                                   guint max)
{
  FmComparePicker *self = picker_new (parent, keys, 0, max);

  self->for_tasting = TRUE;
  gtk_window_set_title (GTK_WINDOW (self), _ ("Choose What to Taste"));
  gtk_button_set_label (GTK_BUTTON (self->compare_button), _ ("Take"));
  load_choices (self, notebook);
  return self;
}
