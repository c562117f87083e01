/* fm-error.c - the error domain of the core layer */
#include "core/base/fm-error.h"

G_DEFINE_QUARK (fm - core - error - quark, fm_core_error)
