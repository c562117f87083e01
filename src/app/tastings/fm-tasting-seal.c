/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-seal.c - head of an arranged tasting: how far it is, what happened, the way to open */
#include "app/tastings/fm-tasting-seal.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/tastings/fm-tasting-reason.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-widget.h"

struct _FmTastingSeal {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkImage *state_image;
  GtkLabel *state_label;
  GtkLabel *size_label;
  GtkWidget *again_button;
  GtkButton *open_button;
  GtkLabel *hint_label;
  GtkLabel *blinding_label;
  GtkLabel *events_label;

  FmTastingDocument *document;
};

G_DEFINE_FINAL_TYPE (FmTastingSeal, fm_tasting_seal, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingSeal *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static void
show_events (FmTastingSeal *self)
{
  const FmTasting *tasting = get_tasting (self);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < tasting->events->len; i++) {
    g_autofree char *line = fm_tasting_text_event (g_ptr_array_index (tasting->events, i));

    if (i > 0)
      g_string_append_c (text, '\n');
    g_string_append (text, line);
  }
  fm_widget_set_label (self->events_label, text->str);
}

/* Whoever hands out the portions has to know the way that was chosen. */
static void
show_blinding (FmTastingSeal *self)
{
  const FmTasting *tasting = get_tasting (self);
  const gboolean shown =
      fm_tasting_is_sealed (tasting) && tasting->blinding != FM_TASTING_BLINDING_NOT_SAID;
  /* Translators: a way to keep the names from the cook, what it is worth */
  g_autofree char *text = g_strdup_printf (_ ("If the cook tastes too: %s. %s"),
                                           fm_tasting_blinding_name (tasting->blinding),
                                           fm_tasting_blinding_worth (tasting->blinding));

  fm_widget_set_label (self->blinding_label, shown ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->blinding_label), shown);
}

static void
refresh (FmTastingSeal *self)
{
  const FmTasting *tasting = get_tasting (self);
  const gboolean sealed = fm_tasting_is_sealed (tasting);
  g_autofree char *state =
      fm_tasting_text_state (tasting->state, fm_tasting_n_in (tasting), tasting->tasters->len);
  g_autofree char *size = fm_tasting_text_size (tasting->samples->len, tasting->tasters->len);

  fm_widget_set_label (self->state_label, state);
  fm_widget_set_label (self->size_label, size);
  gtk_image_set_from_icon_name (self->state_image,
                                sealed ? "changes-prevent-symbolic" : "changes-allow-symbolic");
  gtk_widget_set_visible (GTK_WIDGET (self->open_button), sealed);
  gtk_widget_set_visible (self->again_button, !sealed);
  gtk_widget_set_visible (GTK_WIDGET (self->hint_label), sealed);
  gtk_widget_set_sensitive (GTK_WIDGET (self->open_button),
                            fm_tasting_document_is_editable (self->document));
  fm_widget_set_class (GTK_WIDGET (self->open_button), "suggested-action",
                       sealed && fm_tasting_all_in (tasting));
  show_blinding (self);
  show_events (self);
}

static void
say_failure (FmTastingSeal *self, const GError *error)
{
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                              _ ("The Codes Stay Sealed"), error->message);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
open_codes (FmTastingSeal *self, const char *reason)
{
  g_autoptr (GError) error = NULL;

  if (!fm_tasting_document_open (self->document, reason, &error))
    say_failure (self, error);
}

static void
reason_response_cb (AdwMessageDialog *dialog, const char *response, FmTastingSeal *self)
{
  if (self->document != NULL && g_str_equal (response, "go"))
    open_codes (self, fm_tasting_reason_dialog_get (dialog));
}

static void
ask_reason (FmTastingSeal *self)
{
  const guint n_out = get_tasting (self)->tasters->len - fm_tasting_n_in (get_tasting (self));
  g_autofree char *body = g_strdup_printf (
      ngettext (
          "%u sheet is not in: waited for, missing or broken off. Once the codes are known, "
          "what is written on it is no blind judgement any more. The reason is recorded with "
          "day and time.",
          "%u sheets are not in: waited for, missing or broken off. Once the codes are known, "
          "what is written on them is no blind judgement any more. The reason is recorded "
          "with day and time.",
          n_out),
      n_out);
  AdwMessageDialog *dialog = fm_tasting_reason_dialog_new (
      GTK_WIDGET (self), _ ("Open the Codes Early?"), body, _ ("_Keep Sealed"), _ ("_Open Early"),
      _ ("Reason for opening early"));

  adw_message_dialog_set_response_appearance (dialog, "go", ADW_RESPONSE_DESTRUCTIVE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (reason_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
open_clicked_cb (FmTastingSeal *self)
{
  if (self->document == NULL)
    return;
  if (fm_tasting_all_in (get_tasting (self)))
    open_codes (self, NULL);
  else
    ask_reason (self);
}

static void
leave_document (FmTastingSeal *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
fm_tasting_seal_dispose (GObject *object)
{
  FmTastingSeal *self = FM_TASTING_SEAL (object);

  leave_document (self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_SEAL);
  G_OBJECT_CLASS (fm_tasting_seal_parent_class)->dispose (object);
}

static void
fm_tasting_seal_class_init (FmTastingSealClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_seal_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-seal.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, state_image);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, state_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, size_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, open_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, again_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, hint_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, blinding_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSeal, events_label);
  gtk_widget_class_bind_template_callback (widget_class, open_clicked_cb);
}

static void
fm_tasting_seal_init (FmTastingSeal *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_seal_set_document (FmTastingSeal *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_SEAL (self));
  leave_document (self);
  if (!g_set_object (&self->document, document))
    return;
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
