/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-blend.h - how a mixture sits in a formula
 *
 * The chosen components share a part of the formula (the mixture); all other lines (salt, water,
 * spice) are fixed: they keep their mass while the mixture is re-divided.
 */
#pragma once

#include "core/formula/fm-brief.h"
#include "core/formula/fm-formula.h"
#include "core/mixture/fm-mix.h"

G_BEGIN_DECLS

#define FM_MIX_BLEND_MIN_COMPONENTS 2
#define FM_MIX_BLEND_MAX_COMPONENTS 6

/** One ingredient, or a group that keeps its inner proportions. */
typedef struct {
  char *name;
  GPtrArray *members; /* char*: fm_ingredient_identity() of each */
  GArray *ratio;      /* double, by member, sum 1: from the base formula */
} FmMixComponent;

typedef struct {
  GPtrArray *components; /* FmMixComponent */
  FmMixRegion region;    /* bounds of the components; limits are added by the caller */
  FmFormula *base;
  double mixture_share; /* of the base's mass, 0 .. 1 */
} FmMixBlend;

FmMixComponent *fm_mix_component_new (const char *name);
FmMixComponent *fm_mix_component_copy (const FmMixComponent *self);
void fm_mix_component_free (FmMixComponent *self);

/**
 * fm_mix_blend_new:
 * @components: FmMixComponent with members; ratios are filled in from @base (equal parts when the
 *   base holds none of a group's members)
 *
 * Errors: a member that is not in the formula, an ingredient in two components, fewer than 2 or
 * more than 6 components, masses unknown or zero.
 */
FmMixBlend *fm_mix_blend_new (const FmFormula *base, const GPtrArray *components, GError **error);
void fm_mix_blend_free (FmMixBlend *self);
/** The base with the mixture divided as @x; same total mass, other lines as they are; (transfer
 * full). Locks are lifted from the lines that change. */
FmFormula *fm_mix_blend_apply (const FmMixBlend *self, const double *x);
/** Shares of the base itself. */
void fm_mix_blend_base_x (const FmMixBlend *self, double *x);
/**
 * Where another formula lies among the components. FALSE with a @reason (nullable) (transfer full)
 * and @x undefined when it cannot be placed: more than 2 % of mass in ingredients that the base
 * does not have; fixed ingredients whose shares of mass are off by more than 2 points in sum; a
 * member whose part of its group is off by more than 2 points.
 */
gboolean
fm_mix_blend_locate (const FmMixBlend *self, const FmFormula *other, double *x, char **reason);
/**
 * A target band of the brief as a limit on x, in the unit of its FmTargetInfo: a_i is the value of
 * the whole blend, fixed part included, were its mixture all component i. FALSE when the band is
 * open on both sides or cannot be worked out: @unknown (transfer full) (nullable) names the
 * ingredients without a value.
 */
gboolean fm_mix_blend_limit (const FmMixBlend *self,
                             FmTargetKind kind,
                             const FmBand *band,
                             FmMixLimit *limit,
                             char **unknown);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixComponent, fm_mix_component_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixBlend, fm_mix_blend_free)

G_END_DECLS
