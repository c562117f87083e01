/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-order.c - the order of samples that is expected, written down before anyone tastes */
#include "app/tastings/fm-tasting-order.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

#define PLACE "fm-tasting-order-place"

struct _FmTastingOrder {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkCheckButton *order_check;
  GtkLabel *why_label;
  GtkWidget *list_box;

  FmTastingDocument *document;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmTastingOrder, fm_tasting_order, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingOrder *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

/* The sample at a place, 1 = best. */
static guint
find_sample (const FmTasting *tasting, guint place)
{
  for (guint i = 0; i < tasting->expected_place->len; i++)
    if (g_array_index (tasting->expected_place, guint, i) == place)
      return i;
  return 0;
}

static void
order_toggled_cb (FmTastingOrder *self)
{
  FmTasting *tasting;

  if (self->loading || self->document == NULL)
    return;
  tasting = get_tasting (self);
  g_clear_pointer (&tasting->expected_place, g_array_unref);
  if (gtk_check_button_get_active (self->order_check)) {
    tasting->expected_place = g_array_new (FALSE, FALSE, sizeof (guint));
    for (guint place = 1; place <= tasting->samples->len; place++)
      g_array_append_val (tasting->expected_place, place);
  }
  fm_tasting_document_did (self->document, _ ("Expected order"));
}

/* The rows are new after each move; the focus goes along with the sample. */
static void
focus_place (FmTastingOrder *self, guint place)
{
  GtkWidget *row = gtk_widget_get_first_child (self->list_box);

  for (guint i = 1; row != NULL && i < place; i++)
    row = gtk_widget_get_next_sibling (row);
  if (row != NULL)
    gtk_widget_grab_focus (gtk_widget_get_last_child (row));
}

static void
up_clicked_cb (GtkWidget *button, FmTastingOrder *self)
{
  const guint place = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), PLACE));
  FmTasting *tasting = get_tasting (self);
  const guint moved = find_sample (tasting, place);
  const guint other = find_sample (tasting, place - 1);

  gtk_widget_grab_focus (GTK_WIDGET (self->order_check));
  g_array_index (tasting->expected_place, guint, moved) = place - 1;
  g_array_index (tasting->expected_place, guint, other) = place;
  fm_tasting_document_did (self->document, _ ("Expected order"));
  focus_place (self, place - 1);
}

static GtkWidget *
row_new (FmTastingOrder *self, const char *name, guint place)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *text = g_strdup_printf (_ ("%u. %s"), place, name);
  GtkWidget *label = gtk_label_new (text);
  GtkWidget *button = gtk_button_new_from_icon_name ("go-up-symbolic");
  g_autofree char *words = g_strdup_printf (_ ("Expect more of %s"), name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_sensitive (button, place > 1);
  gtk_widget_set_tooltip_text (button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  g_object_set_data (G_OBJECT (button), PLACE, GUINT_TO_POINTER (place));
  g_signal_connect (button, "clicked", G_CALLBACK (up_clicked_cb), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

static void
fm_tasting_order_dispose (GObject *object)
{
  FmTastingOrder *self = FM_TASTING_ORDER (object);

  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_ORDER);
  G_OBJECT_CLASS (fm_tasting_order_parent_class)->dispose (object);
}

static void
fm_tasting_order_class_init (FmTastingOrderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_order_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-order.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingOrder, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingOrder, order_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingOrder, why_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingOrder, list_box);
  gtk_widget_class_bind_template_callback (widget_class, order_toggled_cb);
}

static void
fm_tasting_order_init (FmTastingOrder *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_order_set_document (FmTastingOrder *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_ORDER (self));
  g_set_object (&self->document, document);
  fm_tasting_order_refresh (self);
}

void
fm_tasting_order_refresh (FmTastingOrder *self)
{
  const FmTasting *tasting = self->document != NULL ? get_tasting (self) : NULL;
  const gboolean expects = tasting != NULL && tasting->expected_place != NULL;
  const guint n = expects ? tasting->expected_place->len : 0;
  GtkWidget *row;

  self->loading = TRUE;
  gtk_check_button_set_active (self->order_check, expects);
  gtk_widget_set_sensitive (GTK_WIDGET (self->order_check),
                            tasting != NULL && tasting->samples->len >= 2);
  self->loading = FALSE;
  while ((row = gtk_widget_get_first_child (self->list_box)) != NULL)
    gtk_box_remove (GTK_BOX (self->list_box), row);
  for (guint place = 1; place <= n; place++) {
    const FmTastingSample *sample =
        g_ptr_array_index (tasting->samples, find_sample (tasting, place));

    gtk_box_append (GTK_BOX (self->list_box), row_new (self, sample->name, place));
  }
  gtk_widget_set_visible (self->list_box, n > 0);
}
