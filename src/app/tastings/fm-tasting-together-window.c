/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together-window.c - the opened tastings of a blend, or chosen ones, read together */
#include "app/tastings/fm-tasting-together-window.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-cancel-stop.h"
#include "app/session/fm-store-task.h"
#include "app/tastings/fm-tasting-more-box.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/tastings/fm-tasting-together-sections.h"
#include "core/base/fm-date.h"
#include "core/tasting/fm-tasting-together.h"
#include "store/fm-tastings.h"

struct _FmTastingTogetherWindow {
  AdwWindow parent_instance;

  GtkWidget *working_box;
  GtkLabel *headline_label;
  GtkBox *sections_box;
  FmTastingMoreBox *more_box;
  GtkBox *tastings_box;
  GtkSwitch *prior_switch;

  FmSession *session;
  gint64 blend_id;
  GCancellable *work; /* the reading under way */
  GArray *left_out;   /* gint64: of that reading */
  gboolean is_listed; /* the tastings can be chosen */
};

G_DEFINE_FINAL_TYPE (FmTastingTogetherWindow, fm_tasting_together_window, ADW_TYPE_WINDOW)

typedef struct {
  gint64 blend_id;
  gboolean with_prior;
  GArray *left_out; /* gint64 */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_array_unref (order->left_out);
  g_free (order);
}

static gpointer
read_together (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  const FmStop stop = fm_cancel_stop (cancellable);
  FmTastingPool *pool = fm_tastings_pool (notebook, order->blend_id, order->left_out, error);

  return pool != NULL ? fm_tasting_together_new (pool, order->with_prior, &stop, error) : NULL;
}

static void start (FmTastingTogetherWindow *self);

/* The ids of the tastings that are not ticked. */
static GArray *
read_left_out (FmTastingTogetherWindow *self)
{
  GArray *left_out = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->tastings_box));
       child != NULL; child = gtk_widget_get_next_sibling (child)) {
    const gint64 *id = g_object_get_data (G_OBJECT (child), "tasting");

    if (!gtk_check_button_get_active (GTK_CHECK_BUTTON (child)))
      g_array_append_val (left_out, *id);
  }
  return left_out;
}

static void
list_tastings (FmTastingTogetherWindow *self, const FmTastingPool *pool)
{
  for (guint i = 0; i < pool->tastings->len; i++) {
    g_autofree char *date = fm_date_text (g_array_index (pool->held_at, gint64, i));
    g_autofree char *text =
        g_strdup_printf ("%s, %s", fm_tasting_text_title (pool->tastings->pdata[i]), date);
    GtkWidget *button = gtk_check_button_new_with_label (text);

    gtk_check_button_set_active (GTK_CHECK_BUTTON (button), TRUE);
    g_object_set_data_full (G_OBJECT (button), "tasting",
                            g_memdup2 (&g_array_index (pool->ids, gint64, i), sizeof (gint64)),
                            g_free);
    g_signal_connect_object (button, "toggled", G_CALLBACK (start), self, G_CONNECT_SWAPPED);
    gtk_box_append (self->tastings_box, button);
  }
  self->is_listed = TRUE;
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingTogetherWindow *self = FM_TASTING_TOGETHER_WINDOW (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTastingTogether) reading = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->work)
    return;
  gtk_widget_set_visible (self->working_box, FALSE);
  if (reading != NULL && !self->is_listed)
    list_tastings (self, reading->pool);
  g_autofree char *headline =
      reading != NULL ? fm_tasting_together_headline (reading) : g_strdup (error->message);
  gtk_label_set_text (self->headline_label, headline);
  fm_tasting_together_sections_show (self->sections_box, reading);
  fm_tasting_more_box_set (self->more_box, self->session, reading, self->left_out);
}

static void
stop_work (FmTastingTogetherWindow *self)
{
  if (self->work != NULL)
    g_cancellable_cancel (self->work);
  g_clear_object (&self->work);
}

static void
start (FmTastingTogetherWindow *self)
{
  Order *order = g_new0 (Order, 1);

  stop_work (self);
  self->work = g_cancellable_new ();
  order->blend_id = self->blend_id;
  order->with_prior = gtk_switch_get_active (self->prior_switch);
  g_clear_pointer (&self->left_out, g_array_unref);
  self->left_out = read_left_out (self);
  order->left_out = g_array_ref (self->left_out);
  gtk_widget_set_visible (self->working_box, TRUE);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = read_together,
      .free_result = (GDestroyNotify)fm_tasting_together_free,
      .data = order,
      .free_data = order_free,
      .cancellable = self->work,
      .done = read_cb,
  });
}

static void
prior_switched_cb (FmTastingTogetherWindow *self)
{
  if (self->session != NULL)
    start (self);
}

static void
fm_tasting_together_window_dispose (GObject *object)
{
  FmTastingTogetherWindow *self = FM_TASTING_TOGETHER_WINDOW (object);

  stop_work (self);
  g_clear_pointer (&self->left_out, g_array_unref);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TASTING_TOGETHER_WINDOW);
  G_OBJECT_CLASS (fm_tasting_together_window_parent_class)->dispose (object);
}

static void
fm_tasting_together_window_class_init (FmTastingTogetherWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_together_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-together-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, working_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, headline_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, sections_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, more_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, tastings_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingTogetherWindow, prior_switch);
  gtk_widget_class_bind_template_callback (widget_class, prior_switched_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_tasting_together_window_init (FmTastingTogetherWindow *self)
{
  g_type_ensure (FM_TYPE_TASTING_MORE_BOX);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_together_window_show (GtkWidget *parent, FmSession *session)
{
  FmTastingTogetherWindow *self = g_object_new (FM_TYPE_TASTING_TOGETHER_WINDOW, "transient-for",
                                                gtk_widget_get_root (parent), NULL);

  self->session = g_object_ref (session);
  self->blend_id = fm_session_get_blend_id (session);
  start (self);
  gtk_window_present (GTK_WINDOW (self));
}
