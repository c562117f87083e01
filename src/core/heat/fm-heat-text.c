/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat-text.c - what stands beside every estimate of a cook */
#include "core/heat/fm-heat.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"

const char *
fm_heat_label (void)
{
  return _ ("Estimate. It never replaces a thermometer: measure the centre of the thickest patty. "
            "Local rules come first.");
}

static void
add (GStrvBuilder *list, char *sentence)
{
  g_strv_builder_add (list, sentence);
  g_free (sentence);
}

static void
add_pan (GStrvBuilder *list, const FmHeatSetup *setup)
{
  g_autofree char *pan = fm_number_format_unit (setup->pan_c, 0, "°C");
  g_autofree char *contact = fm_number_format_unit (setup->contact_w_m2k, 0, "W/(m² K)");
  g_autofree char *air = fm_number_format_unit (setup->air_c, 0, "°C");
  g_autofree char *loss = fm_number_format_unit (setup->air_w_m2k, 0, "W/(m² K)");

  add (list, g_strdup_printf (_ ("The pan's surface stays at %s and touches the whole face alike, "
                                 "with a contact coefficient of %s on both sides and all the "
                                 "time. Published for double-sided contact grills: 250 to 650 "
                                 "W/(m² K). Fit it to readings from your own pan."),
                              pan, contact));
  add (list, g_strdup_printf (_ ("The upper face, and both faces at rest, lose heat to air of %s "
                                 "with %s (common practice, no source)."),
                              air, loss));
}

GStrv
fm_heat_assumptions (const FmHeatSetup *setup)
{
  g_autoptr (GStrvBuilder) list = g_strv_builder_new ();
  g_autofree char *boiling = fm_number_format_unit (setup->boiling_c, 1, "°C");

  g_strv_builder_add (list, _ ("Heat runs through the thickness only, not in from the rim: best "
                               "for a flat patty much wider than thick."));
  g_strv_builder_add (list, _ ("The patty is the same throughout, not frozen, and keeps its "
                               "thickness and diameter: no shrinking, no bulging, no pressing."));
  g_strv_builder_add (list, _ ("Heat capacity, density and conductivity follow composition and "
                               "temperature after Choi and Okos 1986, components side by side."));
  add_pan (list, setup);
  add (list, g_strdup_printf (_ ("A layer at %s stays there until its water has boiled off; dried "
                                 "layers are the crust. No water moves in from the middle or dries "
                                 "off below the boiling point, and heat of fat melting or protein "
                                 "changing is left out."),
                              boiling));
  g_strv_builder_add (list, _ ("Only boiled water counts as loss here; the drip of fat and juice "
                               "comes on top."));
  g_strv_builder_add (list, _ ("Turning takes no time, and the place of the thermometer is taken "
                               "as mid thickness."));
  return g_strv_builder_end (list);
}
