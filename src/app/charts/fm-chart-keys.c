/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-keys.c - the keys of a chart */
#include "app/charts/fm-chart-private.h"

static int
n_rows (FmChart *self)
{
  const FmChartTable *table = fm_chart_get_table (self);

  return table != NULL ? (int)table->rows->len : 0;
}

static void
go_on (FmChart *self)
{
  fm_chart_pick (self, (fm_chart_get_picked (self) + 1) % n_rows (self));
}

static void
go_back (FmChart *self)
{
  const int at = fm_chart_get_picked (self);

  fm_chart_pick (self, at <= 0 ? n_rows (self) - 1 : at - 1);
}

static void
move (FmChart *self, int right, int down, gboolean far)
{
  if (FM_CHART_GET_CLASS (self)->move != NULL)
    FM_CHART_GET_CLASS (self)->move (self, right, down, far);
  else if (right + down > 0)
    go_on (self);
  else
    go_back (self);
}

gboolean
fm_chart_keys_activate (FmChart *self)
{
  const int at = fm_chart_get_picked (self);

  if (at < 0 || FM_CHART_GET_CLASS (self)->activate == NULL)
    return FALSE;
  FM_CHART_GET_CLASS (self)->activate (self, (guint)at);
  return TRUE;
}

static gboolean
arrow (FmChart *self, guint keyval, gboolean far)
{
  switch (keyval) {
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    move (self, 1, 0, far);
    return TRUE;
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    move (self, -1, 0, far);
    return TRUE;
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    move (self, 0, 1, far);
    return TRUE;
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    move (self, 0, -1, far);
    return TRUE;
  default:
    return FALSE;
  }
}

gboolean
fm_chart_keys_press (FmChart *self, guint keyval, guint keycode, GdkModifierType state)
{
  const int n = n_rows (self);
  const GdkModifierType held = state & gtk_accelerator_get_default_mod_mask ();

  if (n == 0 || (held & ~GDK_SHIFT_MASK) != 0)
    return FALSE;
  if (arrow (self, keyval, held == GDK_SHIFT_MASK))
    return TRUE;
  if (held != 0)
    return FALSE;
  switch (keyval) {
  case GDK_KEY_Page_Down:
  case GDK_KEY_KP_Page_Down:
    go_on (self);
    return TRUE;
  case GDK_KEY_Page_Up:
  case GDK_KEY_KP_Page_Up:
    go_back (self);
    return TRUE;
  case GDK_KEY_Return:
  case GDK_KEY_KP_Enter:
    return fm_chart_keys_activate (self);
  case GDK_KEY_Home:
  case GDK_KEY_KP_Home:
    fm_chart_pick (self, 0);
    return TRUE;
  case GDK_KEY_End:
  case GDK_KEY_KP_End:
    fm_chart_pick (self, n - 1);
    return TRUE;
  default:
    return FALSE;
  }
}
