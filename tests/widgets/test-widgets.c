/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-widgets.c - every widget of the window: made, set, named, and gone without a trace
 *
 * The list of types comes from the sources, so a new widget is tested here from its first day.
 */
#include <adwaita.h>
#include <math.h>

#include "app/charts/fm-chart.h"
#include "app/experiments/fm-readings-row.h"
#include "app/formula/fm-formula-line-row.h"
#include "app/formula/fm-seasoning-row.h"
#include "app/kitchen/fm-kitchen-pad.h"
#include "app/kitchen/fm-kitchen-tile.h"
#include "app/map/fm-map-bounds-row.h"
#include "app/map/fm-map-ingredient-row.h"
#include "app/photos/fm-photo-tile.h"
#include "app/session/fm-session.h"
#include "app/targets/fm-targets-band.h"
#include "app/targets/fm-targets-line.h"
#include "app/tastings/fm-tasting-names.h"
#include "app/widgets/fm-brief-target-row.h"
#include "app/widgets/fm-number-entry.h"
#include "app/window/fm-window.h"
#include "widget-types.h"

typedef struct {
  GtkWidget *widget;
  FmSession *session;
} Fixture;

/* The window is one of an application, and shows a session from the start. */
static GtkWidget *
new_window (FmSession *session)
{
  static AdwApplication *application;

  if (application == NULL) {
    application = adw_application_new (NULL, G_APPLICATION_NON_UNIQUE);
    g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  }
  return GTK_WIDGET (fm_window_new (application, session));
}

/* What takes its name when it is made. */
static GtkWidget *
new_widget (GType type, FmSession *session)
{
  const FmCoreReading reading = { 60, 20 };
  const FmMapIngredient ingredient = { .identity = (char *)"chuck", .name = (char *)"Chuck" };

  if (type == FM_TYPE_WINDOW)
    return new_window (session);
  if (type == FM_TYPE_NUMBER_ENTRY)
    return fm_number_entry_new ("Mass", 0, 1000, 1);
  if (type == FM_TYPE_BRIEF_TARGET_ROW)
    return fm_brief_target_row_new (FM_TARGET_FAT_PCT);
  if (type == FM_TYPE_MAP_BOUNDS_ROW)
    return fm_map_bounds_row_new ("Lean");
  if (type == FM_TYPE_MAP_INGREDIENT_ROW)
    return fm_map_ingredient_row_new (&ingredient);
  if (type == FM_TYPE_READINGS_ROW)
    return fm_readings_row_new (1, &reading, NAN);
  if (type == FM_TYPE_TARGETS_BAND)
    return fm_targets_band_new (FM_QUANTITY_NUTRIENT, FM_NUTRIENT_FAT);
  return g_object_new (type, NULL);
}

/* These are named by the line, the photo or the list that they show: tests/ui/test_names.py. */
static gboolean
is_named_later (GType type)
{
  return type == FM_TYPE_FORMULA_LINE_ROW || type == FM_TYPE_TARGETS_LINE ||
         type == FM_TYPE_PHOTO_TILE || type == FM_TYPE_TASTING_NAMES ||
         type == FM_TYPE_SEASONING_ROW || type == FM_TYPE_KITCHEN_PAD ||
         type == FM_TYPE_KITCHEN_TILE;
}

static void
set_up (Fixture *fixture, gconstpointer type)
{
  fixture->session = fm_session_new ();
  fixture->widget = g_object_ref_sink (new_widget (GPOINTER_TO_SIZE (type), fixture->session));
}

static void
run_idle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    continue;
}

/* Nothing else holds it: no signal, no timer, no circle of references. */
static void
tear_down (Fixture *fixture, gconstpointer type)
{
  if (GTK_IS_WINDOW (fixture->widget))
    gtk_window_destroy (GTK_WINDOW (fixture->widget));
  run_idle ();
  g_assert_finalize_object (fixture->widget);
  run_idle ();
  g_assert_finalize_object (fixture->session);
}

static void
count_cb (guint *n_notified)
{
  (*n_notified)++;
}

/* Another value that the property takes; FALSE when this test knows none. */
static gboolean
change (const Fixture *fixture, const GParamSpec *pspec, GValue *value)
{
  if (pspec->value_type == G_TYPE_BOOLEAN)
    g_value_set_boolean (value, !g_value_get_boolean (value));
  else if (pspec->value_type == G_TYPE_DOUBLE)
    g_value_set_double (value, g_value_get_double (value) < 7 ? 7 : 5);
  else if (pspec->value_type == G_TYPE_INT)
    g_value_set_int (value, g_value_get_int (value) == 1 ? 2 : 1);
  else if (pspec->value_type == G_TYPE_UINT)
    g_value_set_uint (value, g_value_get_uint (value) == 1 ? 2 : 1);
  else if (pspec->value_type == G_TYPE_STRING)
    g_value_set_static_string (value, "Something else");
  else if (pspec->value_type == FM_TYPE_SESSION)
    g_value_set_object (value, fixture->session);
  else
    return FALSE;
  return TRUE;
}

static guint
set_and_count (const Fixture *fixture, const GParamSpec *pspec, const GValue *value)
{
  g_autofree char *signal = g_strconcat ("notify::", pspec->name, NULL);
  guint n_notified = 0;
  gulong handler =
      g_signal_connect_swapped (fixture->widget, signal, G_CALLBACK (count_cb), &n_notified);

  g_object_set_property (G_OBJECT (fixture->widget), pspec->name, value);
  g_signal_handler_disconnect (fixture->widget, handler);
  return n_notified;
}

/* Set to what it is, a property says nothing; set to something else, it says so once. */
static void
check_property (const Fixture *fixture, const GParamSpec *pspec)
{
  g_auto (GValue) value = G_VALUE_INIT;
  g_auto (GValue) now = G_VALUE_INIT;

  g_test_message ("property %s", pspec->name);
  if ((pspec->flags & G_PARAM_READABLE) == 0) /* for templates; nobody can bind to it */
    return;
  g_value_init (&value, pspec->value_type);
  g_object_get_property (G_OBJECT (fixture->widget), pspec->name, &value);
  if ((pspec->flags & G_PARAM_WRITABLE) == 0 || (pspec->flags & G_PARAM_CONSTRUCT_ONLY) != 0)
    return;
  g_assert_cmpuint (set_and_count (fixture, pspec, &value), ==, 0);
  if (!change (fixture, pspec, &value))
    return;
  g_assert_cmpuint (set_and_count (fixture, pspec, &value), ==, 1);
  g_value_init (&now, pspec->value_type);
  g_object_get_property (G_OBJECT (fixture->widget), pspec->name, &now);
  g_assert_cmpint (g_param_values_cmp ((GParamSpec *)pspec, &value, &now), ==, 0);
}

static gboolean
is_ours (GType type)
{
  return g_str_has_prefix (g_type_name (type), "Fm");
}

static void
test_properties (Fixture *fixture, gconstpointer type)
{
  guint n_specs;
  g_autofree GParamSpec **specs =
      g_object_class_list_properties (G_OBJECT_GET_CLASS (fixture->widget), &n_specs);

  for (guint i = 0; i < n_specs; i++) {
    if (is_ours (specs[i]->owner_type))
      check_property (fixture, specs[i]);
  }
}

/* Words of its own that a reader speaks: a label inside, or a title. */
static gboolean
has_words (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && *gtk_label_get_text (GTK_LABEL (widget)) != '\0')
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    if (has_words (child))
      return TRUE;
  }
  return FALSE;
}

static gboolean
has_name (GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);

  return gtk_test_accessible_has_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL) ||
         gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY);
}

/* What a hand reaches and has no words of its own. */
static gboolean
needs_name (GtkWidget *widget)
{
  if (!gtk_widget_get_visible (widget))
    return FALSE;
  if (GTK_IS_BUTTON (widget) || GTK_IS_MENU_BUTTON (widget))
    return !has_words (widget) && gtk_widget_get_tooltip_text (widget) == NULL;
  return GTK_IS_ENTRY (widget) || GTK_IS_SEARCH_ENTRY (widget) || GTK_IS_SPIN_BUTTON (widget) ||
         GTK_IS_TEXT_VIEW (widget) || GTK_IS_DROP_DOWN (widget) || GTK_IS_SWITCH (widget) ||
         GTK_IS_SCALE (widget);
}

/* The parts of a widget of the library are named by the library. */
static gboolean
is_of_library (GtkWidget *widget)
{
  return gtk_widget_get_ancestor (widget, ADW_TYPE_PREFERENCES_ROW) != NULL ||
         gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL ||
         (!GTK_IS_DROP_DOWN (widget) &&
          gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) != NULL) ||
         (GTK_IS_SEARCH_ENTRY (widget) &&
          gtk_widget_get_ancestor (widget, ADW_TYPE_PREFERENCES_WINDOW) != NULL);
}

static void
check_names (GtkWidget *widget)
{
  if (is_named_later (G_OBJECT_TYPE (widget)))
    return;
  if (needs_name (widget) && !has_name (widget) && !is_of_library (widget))
    g_error ("A %s (%s) in a %s has no name.", G_OBJECT_TYPE_NAME (widget),
             gtk_widget_get_css_name (widget), G_OBJECT_TYPE_NAME (gtk_widget_get_parent (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    check_names (child);
}

static void
test_names (Fixture *fixture, gconstpointer type)
{
  check_names (fixture->widget);
}

/* A reader passes over these, and over their names. */
static gboolean
says_nothing (GtkAccessibleRole role)
{
  return role == GTK_ACCESSIBLE_ROLE_WIDGET || role == GTK_ACCESSIBLE_ROLE_GENERIC;
}

/* What has a name or takes the focus has a role as well. A drawing is a picture, whatever it is
 * drawn in. */
static void
check_roles (GtkWidget *widget)
{
  const GtkAccessibleRole role = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget));
  const gboolean is_reached = is_ours (G_OBJECT_TYPE (widget)) && gtk_widget_get_focusable (widget);

  if (FM_IS_CHART (widget))
    g_assert_cmpint (role, ==, GTK_ACCESSIBLE_ROLE_IMG);
  if ((has_name (widget) || is_reached) && says_nothing (role))
    g_test_fail_printf ("A %s in a %s has %s and no role.", G_OBJECT_TYPE_NAME (widget),
                        G_OBJECT_TYPE_NAME (gtk_widget_get_parent (widget)),
                        is_reached ? "the focus" : "a name");
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    check_roles (child);
}

static void
test_roles (Fixture *fixture, gconstpointer type)
{
  check_roles (fixture->widget);
}

static GtkDropTarget *
drop_target_of (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++) {
    g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

    if (GTK_IS_DROP_TARGET (controller))
      return GTK_DROP_TARGET (controller);
  }
  return NULL;
}

static void
keep_text_cb (FmSession *session, const char *text, char **kept)
{
  g_free (*kept);
  *kept = g_strdup (text);
}

/* A file that is dropped on the window is opened there, and says so when it lies elsewhere. */
static void
test_drop (Fixture *fixture, gconstpointer type)
{
  GtkDropTarget *target = drop_target_of (fixture->widget);
  g_autoptr (GFile) file = g_file_new_for_uri ("sftp://elsewhere.invalid/dropped.forcemeat");
  GSList files = { .data = file };
  g_autofree char *told = NULL;
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean taken = FALSE;

  g_assert_nonnull (target);
  g_signal_connect (fixture->session, "failure", G_CALLBACK (keep_text_cb), &told);
  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, gdk_file_list_new_from_list (&files));
  g_signal_emit_by_name (target, "drop", &value, 1.0, 1.0, &taken);
  g_assert_true (taken);
  g_assert_nonnull (told);
  g_assert_nonnull (strstr (told, "dropped.forcemeat is not on this computer's disks."));
}

static void
add (GType type, const char *what, void (*test) (Fixture *, gconstpointer))
{
  g_autofree char *path = g_strdup_printf ("/widgets/%s/%s", g_type_name (type), what);

  g_test_add (path, Fixture, GSIZE_TO_POINTER (type), set_up, test, tear_down);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  adw_init ();
  for (guint i = 0; i < G_N_ELEMENTS (all_types); i++) {
    const GType type = all_types[i]();

    if (!g_type_is_a (type, GTK_TYPE_WIDGET) || G_TYPE_IS_ABSTRACT (type))
      continue;
    add (type, "properties", test_properties);
    add (type, "names", test_names);
    add (type, "roles", test_roles);
  }
  add (FM_TYPE_WINDOW, "drop", test_drop);
  return g_test_run ();
}
