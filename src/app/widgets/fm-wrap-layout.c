/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-wrap-layout.c - places children in columns, as many beside each other as there is room for */
#include "app/widgets/fm-wrap-layout.h"

struct _FmWrapLayout {
  GtkLayoutManager parent_instance;

  guint column_spacing;
  guint row_spacing;
  guint min_per_line;
  guint max_per_line;
  gboolean homogeneous;
};

G_DEFINE_FINAL_TYPE (FmWrapLayout, fm_wrap_layout, GTK_TYPE_LAYOUT_MANAGER)

enum {
  PROP_0,
  PROP_COLUMN_SPACING,
  PROP_ROW_SPACING,
  PROP_MIN_PER_LINE,
  PROP_MAX_PER_LINE,
  PROP_HOMOGENEOUS,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static GPtrArray *
children_of (GtkWidget *widget)
{
  GPtrArray *children = g_ptr_array_new ();

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_should_layout (child))
      g_ptr_array_add (children, child);
  return children;
}

static void
make_equal (GArray *columns)
{
  GtkRequestedSize widest = { NULL, 0, 0 };

  for (guint i = 0; i < columns->len; i++) {
    const GtkRequestedSize *column = &g_array_index (columns, GtkRequestedSize, i);

    widest.minimum_size = MAX (widest.minimum_size, column->minimum_size);
    widest.natural_size = MAX (widest.natural_size, column->natural_size);
  }
  for (guint i = 0; i < columns->len; i++)
    g_array_index (columns, GtkRequestedSize, i) = widest;
}

/* The widths that so many columns ask for. */
static GArray *
measure_columns (FmWrapLayout *self, GPtrArray *children, guint n_columns)
{
  GArray *columns = g_array_sized_new (FALSE, TRUE, sizeof (GtkRequestedSize), n_columns);

  g_array_set_size (columns, n_columns);
  for (guint i = 0; i < children->len; i++) {
    GtkRequestedSize *column = &g_array_index (columns, GtkRequestedSize, i % n_columns);
    int minimum = 0;
    int natural = 0;

    gtk_widget_measure (g_ptr_array_index (children, i), GTK_ORIENTATION_HORIZONTAL, -1, &minimum,
                        &natural, NULL, NULL);
    column->minimum_size = MAX (column->minimum_size, minimum);
    column->natural_size = MAX (column->natural_size, natural);
  }
  if (self->homogeneous)
    make_equal (columns);
  return columns;
}

static int
gaps (FmWrapLayout *self, guint n_columns)
{
  return n_columns > 0 ? (int)((n_columns - 1) * self->column_spacing) : 0;
}

static void
sum_columns (FmWrapLayout *self, GArray *columns, int *minimum, int *natural)
{
  *minimum = *natural = gaps (self, columns->len);
  for (guint i = 0; i < columns->len; i++) {
    *minimum += g_array_index (columns, GtkRequestedSize, i).minimum_size;
    *natural += g_array_index (columns, GtkRequestedSize, i).natural_size;
  }
}

/* As many columns as @width holds at their natural widths. */
static GArray *
choose_columns (FmWrapLayout *self, GPtrArray *children, int width)
{
  const guint least = CLAMP (self->min_per_line, 1, MAX (children->len, 1));
  guint n = CLAMP (self->max_per_line, least, MAX (children->len, least));

  for (;; n--) {
    GArray *columns = measure_columns (self, children, n);
    int minimum;
    int natural;

    sum_columns (self, columns, &minimum, &natural);
    if (n == least || natural <= width)
      return columns;
    g_array_unref (columns);
  }
}

/* The columns with the widths that they get, in their minimum_size. */
static GArray *
fit_columns (FmWrapLayout *self, GPtrArray *children, int width)
{
  GArray *columns = choose_columns (self, children, width);
  int minimum;
  int natural;
  int rest;

  sum_columns (self, columns, &minimum, &natural);
  rest = gtk_distribute_natural_allocation (MAX (width - minimum, 0), columns->len,
                                            (GtkRequestedSize *)(gpointer)columns->data);
  for (guint i = 0; i < columns->len; i++) {
    const int share = rest / (int)(columns->len - i);

    g_array_index (columns, GtkRequestedSize, i).minimum_size += share;
    rest -= share;
  }
  return columns;
}

static int
row_height (GPtrArray *children, guint first, GArray *columns)
{
  int height = 0;

  for (guint c = 0; c < columns->len && first + c < children->len; c++) {
    const int width = g_array_index (columns, GtkRequestedSize, c).minimum_size;
    int natural = 0;

    gtk_widget_measure (g_ptr_array_index (children, first + c), GTK_ORIENTATION_VERTICAL, width,
                        NULL, &natural, NULL, NULL);
    height = MAX (height, natural);
  }
  return height;
}

static void
place_row (FmWrapLayout *self,
           GtkWidget *widget,
           GPtrArray *children,
           guint first,
           GArray *columns,
           GtkAllocation place)
{
  const gboolean mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  const int width = place.width;
  int x = 0;

  for (guint c = 0; c < columns->len && first + c < children->len; c++) {
    place.width = g_array_index (columns, GtkRequestedSize, c).minimum_size;
    place.x = mirrored ? width - x - place.width : x;
    gtk_widget_size_allocate (g_ptr_array_index (children, first + c), &place, -1);
    x += place.width + (int)self->column_spacing;
  }
}

static int
height_for_width (FmWrapLayout *self, GPtrArray *children, int width)
{
  g_autoptr (GArray) columns = fit_columns (self, children, width);
  int height = 0;

  for (guint first = 0; first < children->len; first += columns->len)
    height += (first > 0 ? (int)self->row_spacing : 0) + row_height (children, first, columns);
  return height;
}

static void
width_range (FmWrapLayout *self, GPtrArray *children, int *minimum, int *natural)
{
  g_autoptr (GArray) fewest = choose_columns (self, children, 0);
  g_autoptr (GArray) most = choose_columns (self, children, G_MAXINT);
  int unused;

  sum_columns (self, fewest, minimum, &unused);
  sum_columns (self, most, &unused, natural);
}

static GtkSizeRequestMode
fm_wrap_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
fm_wrap_layout_measure (GtkLayoutManager *manager,
                        GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  FmWrapLayout *self = FM_WRAP_LAYOUT (manager);
  g_autoptr (GPtrArray) children = children_of (widget);
  int least;
  int most;

  width_range (self, children, &least, &most);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = least;
    *natural = MAX (least, most);
  } else {
    *minimum = *natural = height_for_width (self, children, for_size >= 0 ? for_size : most);
  }
}

static void
fm_wrap_layout_allocate (
    GtkLayoutManager *manager, GtkWidget *widget, int width, int height, int baseline)
{
  FmWrapLayout *self = FM_WRAP_LAYOUT (manager);
  g_autoptr (GPtrArray) children = children_of (widget);
  g_autoptr (GArray) columns = fit_columns (self, children, width);
  GtkAllocation place = { 0, 0, width, 0 };

  for (guint first = 0; first < children->len; first += columns->len) {
    place.height = row_height (children, first, columns);
    place_row (self, widget, children, first, columns, place);
    place.y += place.height + (int)self->row_spacing;
  }
}

static void
fm_wrap_layout_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmWrapLayout *self = FM_WRAP_LAYOUT (object);

  switch (id) {
  case PROP_COLUMN_SPACING:
    self->column_spacing = g_value_get_uint (value);
    break;
  case PROP_ROW_SPACING:
    self->row_spacing = g_value_get_uint (value);
    break;
  case PROP_MIN_PER_LINE:
    self->min_per_line = g_value_get_uint (value);
    break;
  case PROP_MAX_PER_LINE:
    self->max_per_line = g_value_get_uint (value);
    break;
  case PROP_HOMOGENEOUS:
    self->homogeneous = g_value_get_boolean (value);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    return;
  }
  gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (self));
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  props[PROP_COLUMN_SPACING] =
      g_param_spec_uint ("column-spacing", NULL, NULL, 0, G_MAXINT16, 0, flags);
  props[PROP_ROW_SPACING] = g_param_spec_uint ("row-spacing", NULL, NULL, 0, G_MAXINT16, 0, flags);
  props[PROP_MIN_PER_LINE] = g_param_spec_uint ("min-per-line", NULL, NULL, 1, 64, 1, flags);
  props[PROP_MAX_PER_LINE] = g_param_spec_uint ("max-per-line", NULL, NULL, 1, 64, 7, flags);
  props[PROP_HOMOGENEOUS] = g_param_spec_boolean ("homogeneous", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
fm_wrap_layout_class_init (FmWrapLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  G_OBJECT_CLASS (klass)->set_property = fm_wrap_layout_set_property;
  manager_class->get_request_mode = fm_wrap_layout_get_request_mode;
  manager_class->measure = fm_wrap_layout_measure;
  manager_class->allocate = fm_wrap_layout_allocate;
  install_properties (G_OBJECT_CLASS (klass));
}

static void
fm_wrap_layout_init (FmWrapLayout *self)
{
  self->min_per_line = 1;
  self->max_per_line = 7;
}

GtkLayoutManager *
fm_wrap_layout_new (guint spacing, guint max_per_line)
{
  return g_object_new (FM_TYPE_WRAP_LAYOUT, "column-spacing", spacing, "row-spacing", spacing,
                       "max-per-line", max_per_line, NULL);
}

void
fm_wrap_layout_set_max_per_line (FmWrapLayout *self, guint max_per_line)
{
  g_return_if_fail (FM_IS_WRAP_LAYOUT (self));
  g_object_set (self, "max-per-line", max_per_line, NULL);
}
