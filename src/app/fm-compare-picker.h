/* fm-compare-picker.h - chooses 2 to 8 versions or experiments to compare
 *
 * Signal: "chosen" (GStrv keys): the user confirmed; the window closes itself
 */
#pragma once

#include <adwaita.h>

#include "store/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_PICKER (fm_compare_picker_get_type ())
G_DECLARE_FINAL_TYPE (FmComparePicker, fm_compare_picker, FM, COMPARE_PICKER, AdwWindow)

/** @keys: (nullable): what is chosen now */
FmComparePicker *
fm_compare_picker_new (GtkWindow *parent, FmNotebook *notebook, const char *const *keys);

G_END_DECLS
