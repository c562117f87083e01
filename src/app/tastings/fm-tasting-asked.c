/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-asked.c - what a planned tasting asks: tasks, attributes, the two of a pair or
 * triangle
 */
#include "app/tastings/fm-tasting-asked.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/tastings/fm-tasting-names.h"
#include "app/widgets/fm-widget.h"

#define N_TASKS 6

struct _FmTastingAsked {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkCheckButton *rank_check;
  GtkCheckButton *liking_check;
  GtkCheckButton *jar_check;
  GtkCheckButton *preference_check;
  GtkCheckButton *triangle_check;
  GtkCheckButton *remarks_check;
  FmTastingNames *attributes;
  GtkWidget *pair_box;
  GtkDropDown *pair_first;
  GtkDropDown *pair_second;
  GtkWidget *triangle_box;
  GtkDropDown *triangle_first;
  GtkDropDown *triangle_second;

  FmTastingDocument *document;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmTastingAsked, fm_tasting_asked, GTK_TYPE_WIDGET)

static const FmTastingTask tasks[N_TASKS] = {
  FM_TASTING_RANK,       FM_TASTING_LIKING,   FM_TASTING_JAR,
  FM_TASTING_PREFERENCE, FM_TASTING_TRIANGLE, FM_TASTING_REMARKS,
};

static FmTasting *
get_tasting (FmTastingAsked *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static gboolean
is_loading (FmTastingAsked *self)
{
  return self->loading || self->document == NULL;
}

static void
get_checks (FmTastingAsked *self, GtkCheckButton *checks[N_TASKS])
{
  checks[0] = self->rank_check;
  checks[1] = self->liking_check;
  checks[2] = self->jar_check;
  checks[3] = self->preference_check;
  checks[4] = self->triangle_check;
  checks[5] = self->remarks_check;
}

static void
task_toggled_cb (FmTastingAsked *self)
{
  GtkCheckButton *checks[N_TASKS];
  guint asked = 0;

  if (is_loading (self))
    return;
  get_checks (self, checks);
  for (guint i = 0; i < N_TASKS; i++)
    if (gtk_check_button_get_active (checks[i]))
      asked |= tasks[i];
  get_tasting (self)->tasks = asked;
  fm_tasting_document_did (self->document, _ ("What is asked"));
}

static void
attribute_added_cb (FmTastingAsked *self, const char *name)
{
  if (is_loading (self) || get_tasting (self)->attributes->len >= FM_TASTING_MAX_ATTRIBUTES)
    return;
  g_ptr_array_add (get_tasting (self)->attributes, g_strdup (name));
  fm_tasting_document_did_to (self->document, _ ("Ask about %s"), name);
}

static void
attribute_removed_cb (FmTastingAsked *self, guint index)
{
  g_autofree char *removed = NULL;

  if (is_loading (self) || index >= get_tasting (self)->attributes->len)
    return;
  removed = g_strdup (g_ptr_array_index (get_tasting (self)->attributes, index));
  g_ptr_array_remove_index (get_tasting (self)->attributes, index);
  fm_tasting_document_did_to (self->document, _ ("Do not ask about %s"), removed);
}

/* The first choice of each list is "none". */
static void
take_two (GtkDropDown *first, GtkDropDown *second, int chosen[2])
{
  chosen[0] = (int)gtk_drop_down_get_selected (first) - 1;
  chosen[1] = (int)gtk_drop_down_get_selected (second) - 1;
}

static void
two_changed_cb (FmTastingAsked *self)
{
  if (is_loading (self))
    return;
  take_two (self->pair_first, self->pair_second, get_tasting (self)->pair);
  take_two (self->triangle_first, self->triangle_second, get_tasting (self)->triangle);
  fm_tasting_document_did (self->document, _ ("Pair or triangle"));
}

/* @tasting: (nullable) */
static GStrv
get_choices (const FmTasting *tasting)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  g_strv_builder_add (builder, _ ("Choose a sample"));
  for (guint i = 0; tasting != NULL && i < tasting->samples->len; i++) {
    const FmTastingSample *sample = g_ptr_array_index (tasting->samples, i);

    g_strv_builder_add (builder, sample->name != NULL ? sample->name : "");
  }
  return g_strv_builder_end (builder);
}

static gboolean
has_choices (GtkDropDown *drop_down, const char *const *choices)
{
  GListModel *model = gtk_drop_down_get_model (drop_down);
  guint n = model != NULL ? g_list_model_get_n_items (model) : 0;

  if (n != g_strv_length ((char **)choices))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (gtk_string_list_get_string (GTK_STRING_LIST (model), i), choices[i]) != 0)
      return FALSE;
  return TRUE;
}

static void
show_choice (GtkDropDown *drop_down, const char *const *choices, int chosen)
{
  if (!has_choices (drop_down, choices)) {
    g_autoptr (GtkStringList) model = gtk_string_list_new (choices);

    gtk_drop_down_set_model (drop_down, G_LIST_MODEL (model));
  }
  gtk_drop_down_set_selected (drop_down, (guint)(chosen + 1));
}

static void
show_two (FmTastingAsked *self, const FmTasting *tasting)
{
  const int none[2] = { -1, -1 };
  const int *pair = tasting != NULL ? tasting->pair : none;
  const int *triangle = tasting != NULL ? tasting->triangle : none;
  const guint asked = tasting != NULL ? tasting->tasks : 0;
  g_auto (GStrv) choices = get_choices (tasting);
  const char *const *list = (const char *const *)choices;

  show_choice (self->pair_first, list, pair[0]);
  show_choice (self->pair_second, list, pair[1]);
  show_choice (self->triangle_first, list, triangle[0]);
  show_choice (self->triangle_second, list, triangle[1]);
  gtk_widget_set_visible (self->pair_box, (asked & FM_TASTING_PREFERENCE) != 0);
  gtk_widget_set_visible (self->triangle_box, (asked & FM_TASTING_TRIANGLE) != 0);
}

static void
show_attributes (FmTastingAsked *self)
{
  const FmTasting *tasting = get_tasting (self);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;

  for (guint i = 0; i < tasting->attributes->len; i++)
    g_strv_builder_add (builder, g_ptr_array_index (tasting->attributes, i));
  names = g_strv_builder_end (builder);
  fm_tasting_names_set_names (self->attributes, (const char *const *)names);
  gtk_widget_set_visible (GTK_WIDGET (self->attributes), (tasting->tasks & FM_TASTING_JAR) != 0);
}

static void
fm_tasting_asked_dispose (GObject *object)
{
  FmTastingAsked *self = FM_TASTING_ASKED (object);

  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_ASKED);
  G_OBJECT_CLASS (fm_tasting_asked_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, rank_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, liking_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, jar_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, preference_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, triangle_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, remarks_check);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, attributes);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, pair_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, pair_first);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, pair_second);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, triangle_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, triangle_first);
  gtk_widget_class_bind_template_child (widget_class, FmTastingAsked, triangle_second);
  gtk_widget_class_bind_template_callback (widget_class, task_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, attribute_added_cb);
  gtk_widget_class_bind_template_callback (widget_class, attribute_removed_cb);
  gtk_widget_class_bind_template_callback (widget_class, two_changed_cb);
}

static void
fm_tasting_asked_class_init (FmTastingAskedClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_asked_dispose;
  g_type_ensure (FM_TYPE_TASTING_NAMES);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-asked.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
name_drop_down (GtkDropDown *drop_down, const char *what)
{
  fm_widget_ellipsize_drop_down (drop_down);
  fm_accessible_name_drop_down (drop_down, what);
}

static void
fm_tasting_asked_init (FmTastingAsked *self)
{
  const char *const offered[] = {
    _ ("salt"), _ ("juiciness"), _ ("firmness"), _ ("fat"), _ ("beefiness"), _ ("crust"), NULL,
  };

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_tasting_names_set_words (self->attributes, _ ("Attributes"), _ ("Add an attribute"),
                              _ ("Do not ask about %s"));
  fm_tasting_names_set_offered (self->attributes, offered);
  name_drop_down (self->pair_first, _ ("One of the pair"));
  name_drop_down (self->pair_second, _ ("The other of the pair"));
  name_drop_down (self->triangle_first, _ ("One of the triangle"));
  name_drop_down (self->triangle_second, _ ("The other of the triangle"));
  self->loading = FALSE;
}

void
fm_tasting_asked_set_document (FmTastingAsked *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_ASKED (self));
  g_set_object (&self->document, document);
  fm_tasting_asked_refresh (self);
}

void
fm_tasting_asked_refresh (FmTastingAsked *self)
{
  GtkCheckButton *checks[N_TASKS];

  self->loading = TRUE;
  if (self->document == NULL) {
    /* Not even hidden choices keep names of samples once their codes are given out. */
    show_two (self, NULL);
  } else {
    get_checks (self, checks);
    for (guint i = 0; i < N_TASKS; i++)
      gtk_check_button_set_active (checks[i], (get_tasting (self)->tasks & tasks[i]) != 0);
    show_attributes (self);
    show_two (self, get_tasting (self));
  }
  self->loading = FALSE;
}
