/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-names.c - a short list of names: written one after the other, each can be taken out */
#include "app/tastings/fm-tasting-names.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

#define INDEX "fm-tasting-names-index"
#define MAX_OFFERED 24
#define MAX_COLUMNS 6

struct _FmTastingNames {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *names_box;
  GtkEntry *entry;
  GtkButton *add_button;
  GtkBox *offered_box;

  char *remove_words;
  GStrv names;
  GStrv offered;
};

G_DEFINE_FINAL_TYPE (FmTastingNames, fm_tasting_names, GTK_TYPE_WIDGET)

enum {
  ADDED,
  REMOVED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
remove_clicked_cb (GtkWidget *button, FmTastingNames *self)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), INDEX));

  /* The button goes with its name; the focus must not go astray. */
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  g_signal_emit (self, signals[REMOVED], 0, index);
}

static GtkWidget *
name_widget_new (FmTastingNames *self, const char *name, guint index)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (name);
  GtkWidget *button = gtk_button_new_from_icon_name ("window-close-symbolic");
  g_autoptr (GString) words = g_string_new (self->remove_words);

  g_string_replace (words, "%s", name, 1);
  gtk_widget_add_css_class (box, "fm-name");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_tooltip_text (label, name);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, words->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words->str, -1);
  g_object_set_data (G_OBJECT (button), INDEX, GUINT_TO_POINTER (index));
  g_signal_connect (button, "clicked", G_CALLBACK (remove_clicked_cb), self);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), button);
  return box;
}

static void
offered_clicked_cb (GtkButton *button, FmTastingNames *self)
{
  g_autofree char *name = g_strdup (gtk_button_get_label (button));

  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  g_signal_emit (self, signals[ADDED], 0, name);
}

static gboolean
is_listed (FmTastingNames *self, const char *name)
{
  return self->names != NULL && g_strv_contains ((const char *const *)self->names, name);
}

static void
show_offered (FmTastingNames *self)
{
  guint n = 0;

  fm_widget_clear_box (self->offered_box);
  for (guint i = 0; self->offered != NULL && self->offered[i] != NULL && n < MAX_OFFERED; i++) {
    GtkWidget *button;

    if (is_listed (self, self->offered[i]))
      continue;
    button = gtk_button_new_with_label (self->offered[i]);
    gtk_widget_add_css_class (button, "caption");
    g_signal_connect (button, "clicked", G_CALLBACK (offered_clicked_cb), self);
    gtk_box_append (self->offered_box, button);
    n++;
  }
  gtk_widget_set_visible (GTK_WIDGET (self->offered_box), n > 0);
}

static void
add_cb (FmTastingNames *self)
{
  g_autofree char *name =
      g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));

  if (*name == '\0')
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  g_signal_emit (self, signals[ADDED], 0, name);
}

static void
fm_tasting_names_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TASTING_NAMES);
  G_OBJECT_CLASS (fm_tasting_names_parent_class)->dispose (object);
}

static void
fm_tasting_names_finalize (GObject *object)
{
  FmTastingNames *self = FM_TASTING_NAMES (object);

  g_free (self->remove_words);
  g_strfreev (self->names);
  g_strfreev (self->offered);
  G_OBJECT_CLASS (fm_tasting_names_parent_class)->finalize (object);
}

static void
fm_tasting_names_class_init (FmTastingNamesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_TASTING_NAMES;

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_names_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_tasting_names_finalize;
  signals[ADDED] = g_signal_new ("added", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                 1, G_TYPE_STRING);
  signals[REMOVED] = g_signal_new ("removed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_UINT);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-names.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingNames, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingNames, names_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingNames, entry);
  gtk_widget_class_bind_template_child (widget_class, FmTastingNames, add_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingNames, offered_box);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
}

static void
fm_tasting_names_init (FmTastingNames *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_names_set_words (FmTastingNames *self,
                            const char *list,
                            const char *add,
                            const char *remove)
{
  g_return_if_fail (FM_IS_TASTING_NAMES (self));
  g_free (self->remove_words);
  self->remove_words = g_strdup (remove);
  gtk_entry_set_placeholder_text (self->entry, add);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, add,
                                  -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->add_button), add);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  add, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->names_box), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  list, -1);
}

void
fm_tasting_names_set_tall (FmTastingNames *self, gboolean tall)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self->names_box));

  fm_wrap_layout_set_max_per_line (FM_WRAP_LAYOUT (layout), tall ? 1 : MAX_COLUMNS);
}

void
fm_tasting_names_set_names (FmTastingNames *self, const char *const *names)
{
  g_return_if_fail (FM_IS_TASTING_NAMES (self));
  if (self->names != NULL && g_strv_equal ((const char *const *)self->names, names))
    return;
  g_strfreev (self->names);
  self->names = g_strdupv ((char **)names);
  fm_widget_clear_box (self->names_box);
  for (guint i = 0; names[i] != NULL; i++)
    gtk_box_append (self->names_box, name_widget_new (self, names[i], i));
  gtk_widget_set_visible (GTK_WIDGET (self->names_box), names[0] != NULL);
  show_offered (self);
}

void
fm_tasting_names_set_offered (FmTastingNames *self, const char *const *names)
{
  g_return_if_fail (FM_IS_TASTING_NAMES (self));
  g_strfreev (self->offered);
  self->offered = g_strdupv ((char **)names);
  show_offered (self);
}
