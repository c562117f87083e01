/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-acts.c - the table of what can be done at the pan: one key and one action each */
#include "app/kitchen/fm-kitchen-acts.h"

/* What is not done to a portion. */
#define NO_KIND ((FmKitchenKind)-1)

static const struct {
  guint key;
  const char *action;
  FmKitchenKind kind;
} acts[] = {
  { GDK_KEY_s, "kitchen.salted", FM_KITCHEN_SALTED },
  { GDK_KEY_a, "kitchen.salt-all", NO_KIND },
  { GDK_KEY_h, "kitchen.on", FM_KITCHEN_ON },
  { GDK_KEY_t, "kitchen.turned", FM_KITCHEN_TURNED },
  { GDK_KEY_o, "kitchen.off", FM_KITCHEN_OFF },
  { GDK_KEY_e, "kitchen.rested", FM_KITCHEN_REST_OVER },
  { GDK_KEY_c, "kitchen.core", FM_KITCHEN_CORE },
  { GDK_KEY_r, "kitchen.raw", FM_KITCHEN_RAW },
  { GDK_KEY_k, "kitchen.cooked", FM_KITCHEN_COOKED },
  { GDK_KEY_p, "kitchen.photo", NO_KIND },
  { GDK_KEY_m, "kitchen.remark", NO_KIND },
  { GDK_KEY_w, "kitchen.weigh", NO_KIND },
  { GDK_KEY_u, "kitchen.take-back", NO_KIND },
  { GDK_KEY_b, "kitchen.probe", NO_KIND },
};

void
fm_kitchen_acts_install (GtkWidgetClass *widget_class, GtkWidgetActionActivateFunc activate)
{
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (acts[i].kind != NO_KIND)
      gtk_widget_class_install_action (widget_class, acts[i].action, NULL, activate);
}

void
fm_kitchen_acts_enable (GtkWidget *widget,
                        const FmKitchenState *state,
                        int portion,
                        gboolean is_read)
{
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (acts[i].kind != NO_KIND)
      gtk_widget_action_set_enabled (widget, acts[i].action,
                                     is_read && fm_kitchen_can (state, portion, acts[i].kind));
}

gboolean
fm_kitchen_acts_kind (const char *action, FmKitchenKind *kind)
{
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (g_str_equal (acts[i].action, action) && acts[i].kind != NO_KIND) {
      *kind = acts[i].kind;
      return TRUE;
    }
  return FALSE;
}

const char *
fm_kitchen_acts_of_key (guint key)
{
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (acts[i].key == key)
      return acts[i].action;
  return NULL;
}
