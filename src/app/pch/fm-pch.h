/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* The toolkit's headers, read once: most of the time that a file takes to compile goes into them.
 * Every file still includes what it uses; the tests build without this. */
#include <adwaita.h>
