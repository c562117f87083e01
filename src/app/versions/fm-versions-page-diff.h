/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-diff.h - what changed between a version and its parent, in lines and numbers */
#pragma once

#include <gio/gio.h>

#include "core/formula/fm-analysis.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE_CHANGE (fm_versions_page_change_get_type ())
G_DECLARE_FINAL_TYPE (
    FmVersionsPageChange, fm_versions_page_change, FM, VERSIONS_PAGE_CHANGE, GObject)

/** The ingredient, or the quantity; NULL for the row of headings. */
const char *fm_versions_page_change_get_name (FmVersionsPageChange *self);
/** For a line: "Added", "Removed", "Changed"; NULL for a number. */
const char *fm_versions_page_change_get_kind (FmVersionsPageChange *self);
/** For a line: grams and shares in words. */
const char *fm_versions_page_change_get_text (FmVersionsPageChange *self);
/** For a number: 0 this version, 1 the parent, 2 the difference. */
const char *fm_versions_page_change_get_value (FmVersionsPageChange *self, guint column);

typedef struct {
  gint64 version_id;     /* 0 = the draft */
  FmVersionInfo *info;   /* NULL for the draft */
  FmVersionInfo *parent; /* NULL = none */
  GPtrArray *lines;      /* FmVersionsPageChange: lines that differ */
  guint n_same;          /* lines that do not */
  GPtrArray *process;  /* FmVersionsPageChange: every planned field, and those no longer planned */
  GPtrArray *numbers;  /* FmVersionsPageChange */
  GPtrArray *tastings; /* FmTastingOutcome of opened tastings, newest first; NULL for the draft */
} FmVersionsPageDiff;

/**
 * Reads a version (0: the draft of @blend_id) and its parent and compares them; may take a while.
 * @currency: sign written beside costs
 */
FmVersionsPageDiff *fm_versions_page_diff_read (
    FmNotebook *notebook, gint64 blend_id, gint64 version_id, const char *currency, GError **error);
void fm_versions_page_diff_free (FmVersionsPageDiff *self);

/** Lines that differ between two formulas; @parent may be NULL. @n_same: (out). */
GPtrArray *
fm_versions_page_diff_lines (const FmFormula *formula, const FmFormula *parent, guint *n_same);
/** The process of a formula field by field, with what the parent's was; @parent may be NULL. */
GPtrArray *fm_versions_page_diff_process (const FmProcess *process, const FmProcess *parent);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmVersionsPageDiff, fm_versions_page_diff_free)

G_END_DECLS
