/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Links one room of the core with the rooms that it may use; there is nothing to run. */

int
main (void)
{
  return 0;
}
