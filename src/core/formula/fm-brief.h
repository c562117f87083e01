/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief.h - what is to be developed */
#pragma once

#include "core/formula/fm-target.h"

G_BEGIN_DECLS

/* 180 g raw patty: common practice, no source. */
#define FM_DEFAULT_PATTY_MASS_G 180.0
#define FM_DEFAULT_N_PATTIES 6
#define FM_MAX_PATTY_MASS_G 5000.0
#define FM_MAX_N_PATTIES 100000
#define FM_MAX_SURFACE_SALT_PCT 10.0

/** A band; NaN = open on that side. Inactive bands have both ends open. */
typedef struct {
  double min;
  double max;
} FmBand;

typedef enum {
  FM_BAND_NONE, /* no target set */
  FM_BAND_WITHIN,
  FM_BAND_BELOW,
  FM_BAND_ABOVE,
  FM_BAND_UNKNOWN, /* the value is not known, so nothing can be said */
} FmBandState;

/** Whose legal limits are shown beside the targets (fm-legal.h). */
typedef enum {
  FM_RULE_SET_NONE,
  FM_RULE_SET_US,
  FM_RULE_SET_EU,
  FM_N_RULE_SETS,
} FmRuleSet;

typedef struct {
  double patty_mass_g; /* (0, FM_MAX_PATTY_MASS_G] */
  int n_patties;       /* [1, FM_MAX_N_PATTIES] */
  FmBand bands[FM_N_TARGETS];
  FmRuleSet rules;
  double surface_salt_pct; /* strewn on the shaped patties, % of their mass; NaN = none planned */
  char *doneness;          /* (nullable) free text, e.g. "71.1 °C in the centre" */
  char *notes;             /* (nullable) free text */
} FmBrief;

FmBrief *fm_brief_new (void);
FmBrief *fm_brief_copy (const FmBrief *self);
void fm_brief_free (FmBrief *self);
gboolean fm_brief_equal (const FmBrief *a, const FmBrief *b);
/** Sodium that the salt on the surface brings to 100 g of blend, mg; 0 without. */
double fm_brief_surface_sodium_mg_per_100g (const FmBrief *self);
gboolean fm_brief_check (const FmBrief *self, GError **error);

FmBandState fm_band_state (const FmBand *band, double value);
/** Translated sentence part, e.g. "3.1 above the band 18-22". Returns: (transfer full). */
char *fm_band_describe (const FmBand *band, double value, int decimals, const char *unit);
const char *fm_rule_set_name (FmRuleSet rules); /* translated */
/** Word for files: stable, not translated; NULL for none. */
const char *fm_rule_set_key (FmRuleSet rules);
/** FM_RULE_SET_NONE for NULL and unknown words. */
FmRuleSet fm_rule_set_from_key (const char *key);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmBrief, fm_brief_free)

G_END_DECLS
