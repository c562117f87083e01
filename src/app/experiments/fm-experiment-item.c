/* fm-experiment-item.c - one row of the log as an object, for list models */
#include "app/experiments/fm-experiment-item.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

struct _FmExperimentItem {
  GObject parent_instance;

  GPtrArray *rows;
  FmExperimentInfo *info;
};

G_DEFINE_FINAL_TYPE (FmExperimentItem, fm_experiment_item, G_TYPE_OBJECT)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
fm_experiment_item_finalize (GObject *object)
{
  FmExperimentItem *self = FM_EXPERIMENT_ITEM (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_experiment_item_parent_class)->finalize (object);
}

static void
fm_experiment_item_class_init (FmExperimentItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_experiment_item_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_EXPERIMENT_ITEM, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_experiment_item_init (FmExperimentItem *self)
{
}

static void
append_part (GString *text, const char *part)
{
  g_autofree char *escaped = g_markup_escape_text (part, -1);

  if (text->len > 0)
    g_string_append (text, " · ");
  g_string_append (text, escaped);
}

static void
append_numbers (GString *text, const FmExperimentInfo *info)
{
  if (info->rating > 0) {
    g_autofree char *rating = g_strdup_printf (_ ("%d of 10"), info->rating);

    append_part (text, rating);
  }
  if (!isnan (info->cook_loss_pct)) {
    g_autofree char *number = fm_number_format_unit (info->cook_loss_pct, 1, "%");
    g_autofree char *loss = g_strdup_printf (_ ("loss %s"), number);

    append_part (text, loss);
  }
  if (info->n_photos > 0) {
    g_autofree char *photos =
        g_strdup_printf (ngettext ("%u photo", "%u photos", info->n_photos), info->n_photos);

    append_part (text, photos);
  }
}

FmExperimentItem *
fm_experiment_item_new (GPtrArray *rows, FmExperimentInfo *info)
{
  FmExperimentItem *self = g_object_new (FM_TYPE_EXPERIMENT_ITEM, NULL);

  self->rows = g_ptr_array_ref (rows);
  self->info = info;
  return self;
}

const FmExperimentInfo *
fm_experiment_item_get_info (FmExperimentItem *self)
{
  g_return_val_if_fail (FM_IS_EXPERIMENT_ITEM (self), NULL);
  return self->info;
}

void
fm_experiment_item_update (FmExperimentItem *self, const FmExperiment *experiment)
{
  FmExperimentInfo *info = self->info;
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  g_free (info->title);
  info->title = g_strdup (experiment->title);
  info->made_at = experiment->made_at;
  info->mean_raw_g = stats.mean_g;
  info->cook_loss_pct = stats.cook_loss_pct;
  info->peak_core_c = fm_experiment_peak_core_c (experiment);
  info->rating = experiment->rating;
  g_signal_emit (self, signals[CHANGED], 0);
}

char *
fm_experiment_item_markup (FmExperimentItem *self)
{
  const FmExperimentInfo *info = self->info;
  g_autoptr (GDateTime) made = g_date_time_new_from_unix_local (info->made_at);
  g_autofree char *date = made != NULL ? g_date_time_format (made, "%x") : NULL;
  g_autofree char *version = g_strdup_printf (
      /* Translators: version number, then blend name */
      _ ("Version %d · %s"), info->version_number,
      info->blend_name != NULL ? info->blend_name : "");
  g_autofree char *title = NULL;
  g_autoptr (GString) facts = g_string_new (NULL);
  g_autoptr (GString) origin = g_string_new (NULL);

  if (info->title != NULL && info->title[0] != '\0')
    title = g_markup_escape_text (info->title, -1);
  else
    title = g_markup_escape_text (_ ("Untitled experiment"), -1);
  if (date != NULL)
    append_part (facts, date);
  append_numbers (facts, info);
  append_part (origin, version);
  return g_strdup_printf ("<b>%s</b>\n<small>%s\n%s</small>", title, origin->str, facts->str);
}
