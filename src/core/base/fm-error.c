/* fm-error.c - the error domain of the core layer */
#include "core/base/fm-error.h"

GQuark
fm_core_error_quark (void)
{
  return g_quark_from_static_string ("fm-core-error-quark");
}
