/* The toolkit's headers, read once: most of the time that a file takes to compile goes into them.
 * Every file still includes what it uses; the tests build without this. */
#include <adwaita.h>
