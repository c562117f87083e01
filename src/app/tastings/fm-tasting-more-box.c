/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-more-box.c - asks how many more sheets would tell two samples apart */
#include "app/tastings/fm-tasting-more-box.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-cancel-stop.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-accessible.h"
#include "core/tasting/fm-tasting-more-sheets.h"
#include "store/fm-tastings.h"

struct _FmTastingMoreBox {
  GtkBox parent_instance;

  GtkDropDown *better_choice;
  GtkDropDown *worse_choice;
  GtkDropDown *share_choice;
  GtkButton *ask_button;
  GtkWidget *working_box;
  GtkLabel *answer_label;

  FmSession *session;
  gint64 blend_id;
  gboolean has_prior;
  GArray *left_out;   /* gint64 */
  GCancellable *work; /* the simulation under way */
};

G_DEFINE_FINAL_TYPE (FmTastingMoreBox, fm_tasting_more_box, GTK_TYPE_BOX)

static const double shares[] = { 0.6, 0.65, 0.7, 0.75, 0.8, 0.9 };

typedef struct {
  gint64 blend_id;
  GArray *left_out;
  FmTastingMoreSheets *question;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_array_unref (order->left_out);
  fm_tasting_more_sheets_free (order->question);
  g_free (order);
}

static gpointer
simulate (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  const FmStop stop = fm_cancel_stop (cancellable);
  g_autoptr (FmTastingPool) pool =
      fm_tastings_pool (notebook, order->blend_id, order->left_out, error);

  return pool != NULL ? fm_tasting_more_sheets_text (order->question, pool, &stop, error) : NULL;
}

static void
show_work (FmTastingMoreBox *self, gboolean is_working)
{
  gtk_widget_set_visible (self->working_box, is_working);
  gtk_widget_set_sensitive (GTK_WIDGET (self->ask_button), !is_working);
}

static void
stop_work (FmTastingMoreBox *self)
{
  if (self->work != NULL)
    g_cancellable_cancel (self->work);
  g_clear_object (&self->work);
}

static void
simulated_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingMoreBox *self = FM_TASTING_MORE_BOX (source);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->work)
    return;
  show_work (self, FALSE);
  gtk_label_set_text (self->answer_label, text != NULL ? text : error->message);
}

static char *
dup_chosen (GtkDropDown *choice)
{
  return g_strdup (
      gtk_string_object_get_string (GTK_STRING_OBJECT (gtk_drop_down_get_selected_item (choice))));
}

static FmTastingMoreSheets *
read_question (FmTastingMoreBox *self)
{
  FmTastingMoreSheets *question = g_new0 (FmTastingMoreSheets, 1);

  question->better = dup_chosen (self->better_choice);
  question->worse = dup_chosen (self->worse_choice);
  question->preferred = shares[gtk_drop_down_get_selected (self->share_choice)];
  question->has_prior = self->has_prior;
  return question;
}

static void
ask_cb (FmTastingMoreBox *self)
{
  Order *order = g_new0 (Order, 1);

  stop_work (self);
  self->work = g_cancellable_new ();
  order->blend_id = self->blend_id;
  order->left_out = g_array_ref (self->left_out);
  order->question = read_question (self);
  gtk_label_set_text (self->answer_label, "");
  show_work (self, TRUE);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = simulate,
      .free_result = g_free,
      .data = order,
      .free_data = order_free,
      .cancellable = self->work,
      .done = simulated_cb,
  });
}

static void
cancel_cb (FmTastingMoreBox *self)
{
  stop_work (self);
  show_work (self, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->ask_button));
}

static void
fill_samples (GtkDropDown *choice, const FmTastingTogether *reading, guint chosen)
{
  g_autofree guint *order = fm_tasting_together_order (reading);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < reading->pool->items->len; i++)
    gtk_string_list_append (names, reading->pool->items->pdata[order[i]]);
  gtk_drop_down_set_model (choice, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (choice, chosen);
}

static void
fill_shares (FmTastingMoreBox *self)
{
  g_autoptr (GtkStringList) texts = gtk_string_list_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++) {
    /* TRANSLATORS: on so many sheets is the one sample put before the other */
    g_autofree char *text =
        g_strdup_printf (_ ("%u of 100 sheets"), (guint)lround (100 * shares[i]));

    gtk_string_list_append (texts, text);
  }
  gtk_drop_down_set_model (self->share_choice, G_LIST_MODEL (texts));
  gtk_drop_down_set_selected (self->share_choice, 2);
}

static void
fm_tasting_more_box_dispose (GObject *object)
{
  FmTastingMoreBox *self = FM_TASTING_MORE_BOX (object);

  stop_work (self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->left_out, g_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TASTING_MORE_BOX);
  G_OBJECT_CLASS (fm_tasting_more_box_parent_class)->dispose (object);
}

static void
fm_tasting_more_box_class_init (FmTastingMoreBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_more_box_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-more-box.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, better_choice);
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, worse_choice);
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, share_choice);
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, ask_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, working_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingMoreBox, answer_label);
  gtk_widget_class_bind_template_callback (widget_class, ask_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
}

static void
fm_tasting_more_box_init (FmTastingMoreBox *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_shares (self);
  fm_accessible_name_drop_down (self->better_choice, _ ("Sample put first"));
  fm_accessible_name_drop_down (self->worse_choice, _ ("Sample put behind"));
  fm_accessible_name_drop_down (self->share_choice, _ ("On how many sheets"));
}

void
fm_tasting_more_box_set (FmTastingMoreBox *self,
                         FmSession *session,
                         const FmTastingTogether *reading,
                         GArray *left_out)
{
  const gboolean is_asked = reading != NULL && reading->orders != NULL;

  stop_work (self);
  show_work (self, FALSE);
  gtk_label_set_text (self->answer_label, "");
  gtk_widget_set_visible (GTK_WIDGET (self), is_asked);
  g_clear_pointer (&self->left_out, g_array_unref);
  if (!is_asked)
    return;
  g_set_object (&self->session, session);
  self->blend_id = fm_session_get_blend_id (session);
  self->has_prior = reading->has_prior;
  self->left_out = g_array_ref (left_out);
  fill_samples (self->better_choice, reading, 0);
  fill_samples (self->worse_choice, reading, 1);
}
