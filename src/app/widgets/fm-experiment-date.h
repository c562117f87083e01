/* fm-experiment-date.h - an entry for local date and time, with a calendar
 *
 * Signal: "date-changed" (gint64 made_at): another good date was typed or picked.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_DATE (fm_experiment_date_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentDate, fm_experiment_date, FM, EXPERIMENT_DATE, GtkWidget)

/** @made_at: unix seconds, UTC; shown in local time. Does not emit. */
void fm_experiment_date_set (FmExperimentDate *self, gint64 made_at);
/** Names the entry and the calendar for what is dated, if it is no experiment; translated. */
void
fm_experiment_date_set_what (FmExperimentDate *self, const char *date_name, const char *day_name);

G_END_DECLS
