/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-hold-table.h - a core temperature curve beside each authority's hold times
 *
 * How a varying curve is judged. A table's row asks for a time at or above a temperature; either
 * of the two printed figures (°C or °F) counts, since one is the rounding of the other.
 *
 * - Held: for each row, the longest time from the first to the last of neighbouring readings that
 *   are all at or above the row, none more than FM_HOLD_MAX_GAP_S after the one before. Nothing
 *   is interpolated, rows are never added up, and a dip below starts again from zero.
 * - REACHED: one row is held as long as it asks. A row of 0 s asks for one reading.
 * - NOT_KNOWN: no row is held, but some row might have been: readings at or above it have a gap,
 *   or stand so close to the time asked that the moments of rising and falling through the row
 *   decide. Also without readings, and with a single one unless the table asks for no time.
 * - NOT_REACHED: otherwise. What happened before the first reading and after the last one does not
 *   count: a record that ends while it still holds shows what it shows.
 *
 * None of this is a verdict on a food. Local rules and a licensed professional decide.
 */
#pragma once

#include "core/cooking/fm-authority.h"
#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

/* Longest time between readings that still counts as watched without a break: a choice of ours,
 * common practice, no source. */
#define FM_HOLD_MAX_GAP_S 60.0

typedef enum {
  FM_HOLD_NOT_KNOWN,
  FM_HOLD_NOT_REACHED,
  FM_HOLD_REACHED,
} FmHoldState;

typedef struct {
  FmAuthority authority;
  FmHoldState state;
  FmHoldRow row;    /* the row that decided; when not reached, the one that came closest */
  double held_s;    /* at or above that row by the rule above */
  double highest_c; /* highest reading; NaN without one */
  char *text;       /* translated: authority, section, temperature, seconds held and asked */
} FmHoldVerdict;

/** Seconds that the table asks for at a steady @temp_c: the highest row not above it, without
 * interpolation. NaN below the table or for an unknown temperature. */
double fm_hold_required_s (FmAuthority authority, const FmCookFood *food, double temp_c);

/** "Reached", "Not reached", "Not known". Translated. */
const char *fm_hold_state_name (FmHoldState state);
/** Judges @readings (FmCoreReading, any order; readings that are no finite number are skipped).
 * Fills @verdict; clear it with fm_hold_verdict_clear(). */
void fm_hold_judge (FmAuthority authority,
                    const FmCookFood *food,
                    const GArray *readings,
                    FmHoldVerdict *verdict);
void fm_hold_verdict_clear (FmHoldVerdict *verdict);

/**
 * fm_hold_doneness_caution:
 * @target_c: doneness temperature that the developer chose
 *
 * Below the table of Food Code 3-401.11 for this kind: the consumer advisory of 3-603.11. Within
 * it, below the consumer figure that rules: the hold time it asks for there. From that figure on:
 * NULL. Also NULL for NaN. Translated. Returns: (transfer full) (nullable).
 */
char *fm_hold_doneness_caution (FmSpeciesSet species, double target_c);

G_END_DECLS
