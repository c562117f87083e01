/* Links one room of the core with the rooms that it may use; there is nothing to run. */

int
main (void)
{
  return 0;
}
