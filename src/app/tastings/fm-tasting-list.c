/* fm-tasting-list.c - the notebook's tastings: scope, list and what is said when it is empty */
#include "app/tastings/fm-tasting-list.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/tastings/fm-tasting-query.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-widget.h"

#define ROW_ID "fm-tasting-id"
#define SCOPE_BLEND 0

struct _FmTastingList {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkDropDown *scope_drop_down;
  GtkStack *stack;
  GtkListBox *list_box;
  GtkLabel *count_label;
  GtkLabel *failure_label;

  FmSession *session;
  GHashTable *hidden;    /* ids (gint64*) */
  GCancellable *listing; /* ends when a newer list is asked for */
  gint64 wanted_id;      /* the row to be selected */
  gint64 blend_id;       /* that was listed; 0 = all */
  gboolean selecting;    /* the selection changes by the program */
};

G_DEFINE_FINAL_TYPE (FmTastingList, fm_tasting_list, GTK_TYPE_WIDGET)

enum {
  SELECTED,
  ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gint64
get_row_id (GtkListBoxRow *row)
{
  const gint64 *id = row != NULL ? g_object_get_data (G_OBJECT (row), ROW_ID) : NULL;

  return id != NULL ? *id : 0;
}

static GtkListBoxRow *
find_row (FmTastingList *self, gint64 id)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list_box, i)) != NULL; i++)
    if (get_row_id (row) == id)
      return row;
  return NULL;
}

static char *
info_markup (const FmTastingInfo *info)
{
  g_autoptr (GDateTime) held = g_date_time_new_from_unix_local (info->held_at);
  g_autofree char *date = held != NULL ? g_date_time_format (held, "%x") : g_strdup ("");
  g_autofree char *size = fm_tasting_text_size (info->n_samples, info->n_tasters);
  g_autofree char *state = fm_tasting_text_state (info->state, info->n_in, info->n_tasters);
  const char *headline = info->headline != NULL ? info->headline : "";

  return g_markup_printf_escaped ("<b>%s</b>\n<small>%s · %s\n%s%s%s</small>",
                                  fm_tasting_text_title (info->title), date, size, state,
                                  *headline != '\0' ? "\n" : "", headline);
}

static void
show_info (GtkListBoxRow *row, const FmTastingInfo *info)
{
  GtkLabel *label = GTK_LABEL (gtk_list_box_row_get_child (row));
  g_autofree char *markup = info_markup (info);
  g_autofree char *name = NULL;

  gtk_label_set_markup (label, markup);
  name = g_strdelimit (g_strdup (gtk_label_get_text (label)), "\n", ' ');
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
row_new (const FmTastingInfo *info)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_margin_start (label, 8);
  gtk_widget_set_margin_end (label, 8);
  gtk_widget_set_margin_top (label, 4);
  gtk_widget_set_margin_bottom (label, 4);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  g_object_set_data_full (G_OBJECT (row), ROW_ID, g_memdup2 (&info->id, sizeof info->id), g_free);
  show_info (GTK_LIST_BOX_ROW (row), info);
  return row;
}

static gboolean
has_same_rows (FmTastingList *self, GPtrArray *infos)
{
  for (guint i = 0; i < infos->len; i++) {
    const FmTastingInfo *info = g_ptr_array_index (infos, i);

    if (get_row_id (gtk_list_box_get_row_at_index (self->list_box, (int)i)) != info->id)
      return FALSE;
  }
  return gtk_list_box_get_row_at_index (self->list_box, (int)infos->len) == NULL;
}

/* Rows that stay are only written anew, so that the focus stays on them. */
static void
show_rows (FmTastingList *self, GPtrArray *infos)
{
  const gboolean same = has_same_rows (self, infos);
  GtkListBoxRow *row;

  while (!same && (row = gtk_list_box_get_row_at_index (self->list_box, 0)) != NULL)
    gtk_list_box_remove (self->list_box, GTK_WIDGET (row));
  for (guint i = 0; i < infos->len; i++) {
    if (same)
      show_info (gtk_list_box_get_row_at_index (self->list_box, (int)i),
                 g_ptr_array_index (infos, i));
    else
      gtk_list_box_append (self->list_box, row_new (g_ptr_array_index (infos, i)));
  }
}

static void
select_wanted (FmTastingList *self)
{
  GtkListBoxRow *row = self->wanted_id != 0 ? find_row (self, self->wanted_id) : NULL;

  self->selecting = TRUE;
  gtk_list_box_select_row (self->list_box, row);
  self->selecting = FALSE;
}

static void
show_count (FmTastingList *self, guint n)
{
  g_autofree char *text = g_strdup_printf (ngettext ("%u tasting", "%u tastings", n), n);

  gtk_label_set_text (self->count_label, text);
  gtk_stack_set_visible_child_name (self->stack, n > 0 ? "list" : "empty");
}

static void
drop_hidden (FmTastingList *self, GPtrArray *infos)
{
  for (guint i = infos->len; i > 0; i--) {
    const FmTastingInfo *info = g_ptr_array_index (infos, i - 1);

    if (g_hash_table_contains (self->hidden, &info->id))
      g_ptr_array_remove_index (infos, i - 1);
  }
}

static void
list_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingList) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) infos = fm_tasting_query_list_finish (result, &error);

  if (self->list_box == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (infos == NULL) {
    gtk_label_set_text (self->failure_label, error->message);
    gtk_stack_set_visible_child_name (self->stack, "failure");
    return;
  }
  drop_hidden (self, infos);
  self->selecting = TRUE;
  show_rows (self, infos);
  self->selecting = FALSE;
  show_count (self, infos->len);
  select_wanted (self);
}

static void
row_selected_cb (FmTastingList *self, GtkListBoxRow *row)
{
  const gint64 id = get_row_id (row);

  if (self->selecting || id == 0)
    return;
  self->wanted_id = id;
  g_signal_emit (self, signals[SELECTED], 0, id);
}

static void
row_activated_cb (FmTastingList *self, GtkListBoxRow *row)
{
  g_signal_emit (self, signals[ACTIVATED], 0, get_row_id (row));
}

static void
scope_changed_cb (FmTastingList *self)
{
  fm_tasting_list_reload (self);
}

static void
fm_tasting_list_dispose (GObject *object)
{
  FmTastingList *self = FM_TASTING_LIST (object);

  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  self->selecting = TRUE;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_LIST);
  g_clear_object (&self->session);
  g_clear_pointer (&self->hidden, g_hash_table_unref);
  G_OBJECT_CLASS (fm_tasting_list_parent_class)->dispose (object);
}

static void
fm_tasting_list_class_init (FmTastingListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_TASTING_LIST;

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_list_dispose;
  signals[SELECTED] = g_signal_new ("selected", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[ACTIVATED] = g_signal_new ("activated", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 1, G_TYPE_INT64);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, scope_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, stack);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, list_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, count_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, failure_label);
  gtk_widget_class_bind_template_callback (widget_class, scope_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
fm_tasting_list_init (FmTastingList *self)
{
  self->hidden = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->scope_drop_down, _ ("Which tastings"));
}

void
fm_tasting_list_set_session (FmTastingList *self, FmSession *session)
{
  g_return_if_fail (FM_IS_TASTING_LIST (self));
  if (g_set_object (&self->session, session))
    fm_tasting_list_reload (self);
}

static gboolean
follows_shown (FmTastingList *self)
{
  return gtk_drop_down_get_selected (self->scope_drop_down) == SCOPE_BLEND;
}

void
fm_tasting_list_reload (FmTastingList *self)
{
  FmNotebook *notebook = self->session != NULL ? fm_session_get_notebook (self->session) : NULL;

  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  if (notebook == NULL) {
    g_autoptr (GPtrArray) none = g_ptr_array_new ();

    show_rows (self, none);
    show_count (self, 0);
    return;
  }
  self->blend_id = follows_shown (self) ? fm_session_get_blend_id (self->session) : 0;
  self->listing = g_cancellable_new ();
  fm_tasting_query_list_async (notebook, self->blend_id, self->listing, list_done_cb,
                               g_object_ref (self));
}

void
fm_tasting_list_shown_changed (FmTastingList *self)
{
  if (follows_shown (self) && self->session != NULL &&
      self->blend_id != fm_session_get_blend_id (self->session))
    fm_tasting_list_reload (self);
}

void
fm_tasting_list_select (FmTastingList *self, gint64 id)
{
  g_return_if_fail (FM_IS_TASTING_LIST (self));
  self->wanted_id = id;
  select_wanted (self);
}

void
fm_tasting_list_set_hidden (FmTastingList *self, gint64 id, gboolean hidden)
{
  if (hidden)
    g_hash_table_add (self->hidden, g_memdup2 (&id, sizeof id));
  else
    g_hash_table_remove (self->hidden, &id);
}
