/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-spots.c - the predicted best blend and the next ones to try, each with its reason */
#include "app/map/fm-map-spots.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "core/mixture/fm-mix-derivation.h"

enum {
  BEST,
  NEXT,
  UNKNOWN,
  N_SPOTS,
};

struct _FmMapSpots {
  GtkWidget parent_instance;

  GtkBox *box;
  GtkBox *best_box;
  GtkBox *next_box;
  GtkLabel *unknown_title;
  GtkLabel *best_label;
  GtkLabel *next_label;
  GtkLabel *unknown_label;
  GtkButton *best_button;
  GtkButton *next_button;
  GtkButton *unknown_button;

  FmMapDocument *document;
  double x[N_SPOTS][FM_MIX_MAX_COMPONENTS];
  char *reason[N_SPOTS];
  char *derivation[N_SPOTS];
};

G_DEFINE_FINAL_TYPE (FmMapSpots, fm_map_spots, GTK_TYPE_WIDGET)

static void
make (FmMapSpots *self, int spot)
{
  g_autofree char *reason = g_strdup (self->reason[spot]);

  if (self->document != NULL && reason != NULL)
    fm_map_document_make_blend (self->document, self->x[spot], reason);
}

static void
make_best_cb (FmMapSpots *self)
{
  make (self, BEST);
}

static void
make_next_cb (FmMapSpots *self)
{
  make (self, NEXT);
}

static void
make_unknown_cb (FmMapSpots *self)
{
  make (self, UNKNOWN);
}

static void
why (FmMapSpots *self, int spot, const char *title)
{
  if (self->derivation[spot] != NULL)
    fm_derivation_window_show (GTK_WIDGET (self), title, self->derivation[spot]);
}

static void
why_best_cb (FmMapSpots *self)
{
  why (self, BEST, _ ("Predicted Best Blend"));
}

static void
why_next_cb (FmMapSpots *self)
{
  why (self, NEXT, _ ("Next Blend to Try"));
}

static void
why_unknown_cb (FmMapSpots *self)
{
  why (self, UNKNOWN, gtk_label_get_text (self->unknown_title));
}

static void
keep_derivation (FmMapSpots *self, int spot, const FmMapFit *fit)
{
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);

  g_free (self->derivation[spot]);
  self->derivation[spot] =
      fm_mix_derivation (fit->fit, fit->data, self->x[spot],
                         fm_map_document_get_short_names (self->document), &wording);
}

/* What the version is saved for: one line, since the tree of versions shows it. */
static void
keep_spot (FmMapSpots *self, int spot, const FmMixSpot *from, const FmMapFit *fit)
{
  static const char *const why[N_SPOTS] = {
    N_ ("Map “%s”: predicted best for %s: %s"),
    N_ ("Map “%s”: worth trying for %s: %s"),
    N_ ("Map “%s”: least known for %s: %s"),
  };
  g_autofree char *shares = fm_map_document_shares_text (self->document, from->x);
  const char *name = fm_map_document_get_map (self->document)->name;

  memcpy (self->x[spot], from->x, sizeof self->x[spot]);
  keep_derivation (self, spot, fit);
  g_free (self->reason[spot]);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  self->reason[spot] =
      g_strdup_printf (_ (why[spot]), name, fm_map_fit_word (fit->response), shares);
#pragma GCC diagnostic pop
}

static void
show_promising (FmMapSpots *self, const FmMapFit *fit)
{
  const char *const *names = fm_map_document_get_short_names (self->document);
  const gboolean editable = fm_map_document_is_editable (self->document);
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);
  g_autofree char *best = fm_mix_best_sentence (fit->fit, &fit->best, names, &wording);
  g_autofree char *next = fm_mix_next_sentence (fit->fit, &fit->next, names, &wording);
  g_autofree char *same = fm_mix_one_blend_sentence (fit->fit->q, fit->best.x, fit->next.x);
  g_autofree char *next_text = same != NULL ? g_strconcat (next, " ", same, NULL) : g_strdup (next);

  keep_spot (self, BEST, &fit->best, fit);
  keep_spot (self, NEXT, &fit->next, fit);
  fm_widget_set_label (self->best_label, best);
  fm_widget_set_label (self->next_label, next_text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->best_button), editable);
  gtk_widget_set_sensitive (GTK_WIDGET (self->next_button), editable);
}

static void
show_unknown (FmMapSpots *self, const FmMapFit *fit)
{
  const char *const *names = fm_map_document_get_short_names (self->document);
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);
  g_autofree char *text = fit->predicts
                              ? fm_mix_unknown_sentence (fit->fit, &fit->unknown, names, &wording)
                              : fm_mix_cook_next_sentence (fit->fit, &fit->unknown, names);

  keep_spot (self, UNKNOWN, &fit->unknown, fit);
  fm_widget_set_label (self->unknown_title, fit->predicts
                                                ? _ ("Next Blend, for What Is Least Known")
                                                : _ ("What to Cook Next"));
  fm_widget_set_label (self->unknown_label, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->unknown_button),
                            fm_map_document_is_editable (self->document));
}

static void
fm_map_spots_dispose (GObject *object)
{
  FmMapSpots *self = FM_MAP_SPOTS (object);

  g_clear_object (&self->document);
  for (int i = 0; i < N_SPOTS; i++)
    g_clear_pointer (&self->reason[i], g_free);
  for (int i = 0; i < N_SPOTS; i++)
    g_clear_pointer (&self->derivation[i], g_free);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_SPOTS);
  G_OBJECT_CLASS (fm_map_spots_parent_class)->dispose (object);
}

static void
fm_map_spots_class_init (FmMapSpotsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_spots_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-spots.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, best_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, next_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, unknown_title);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, best_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, next_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, unknown_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, best_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, next_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapSpots, unknown_button);
  gtk_widget_class_bind_template_callback (widget_class, why_best_cb);
  gtk_widget_class_bind_template_callback (widget_class, why_next_cb);
  gtk_widget_class_bind_template_callback (widget_class, why_unknown_cb);
  gtk_widget_class_bind_template_callback (widget_class, make_best_cb);
  gtk_widget_class_bind_template_callback (widget_class, make_next_cb);
  gtk_widget_class_bind_template_callback (widget_class, make_unknown_cb);
}

static void
fm_map_spots_init (FmMapSpots *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
fm_map_spots_show (FmMapSpots *self, FmMapDocument *document, const FmMapFit *fit)
{
  const gboolean has_unknown = fit != NULL && fit->has_unknown;
  const gboolean predicts = has_unknown && fit->predicts;

  g_return_if_fail (FM_IS_MAP_SPOTS (self));
  g_set_object (&self->document, document);
  gtk_widget_set_visible (GTK_WIDGET (self), has_unknown);
  gtk_widget_set_visible (GTK_WIDGET (self->best_box), predicts);
  gtk_widget_set_visible (GTK_WIDGET (self->next_box), predicts);
  if (predicts)
    show_promising (self, fit);
  if (has_unknown)
    show_unknown (self, fit);
}
