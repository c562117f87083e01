/* fm-mass-text.c - masses as text: grams, and ounces or pounds where they are wanted */
#include "app/widgets/fm-mass-text.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/session/fm-preferences.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

static char *
ounces_text (double mass_g)
{
  if (mass_g >= FM_G_PER_LB)
    return fm_number_format_unit (mass_g / FM_G_PER_LB, 2, _ ("lb"));
  return fm_number_format_unit (mass_g / FM_G_PER_OZ, 2, _ ("oz"));
}

char *
fm_mass_text (double mass_g, int decimals)
{
  g_autofree char *grams = fm_number_format_unit (mass_g, decimals, _ ("g"));
  g_autofree char *ounces = NULL;

  if (isnan (mass_g) || !fm_preferences_us_masses ())
    return g_steal_pointer (&grams);
  ounces = ounces_text (mass_g);
  return g_strdup_printf ("%s (%s)", grams, ounces);
}

char *
fm_mass_cell_text (double mass_g, int decimals)
{
  g_autofree char *grams = fm_number_format (mass_g, decimals);
  g_autofree char *ounces = NULL;

  if (isnan (mass_g) || !fm_preferences_us_masses ())
    return g_steal_pointer (&grams);
  ounces = ounces_text (mass_g);
  return g_strdup_printf ("%s\n%s", grams, ounces);
}
