/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheet-form.c - one taster's sheet to be typed: marks by the code on the cup */
#include "app/tastings/fm-tasting-sheet-form.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-clock.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"

struct _FmTastingSheetForm {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkGrid *grid;     /* (nullable) a row for each sample of the main round, a column a question */
  guint n_columns;   /* of questions in the grid */
  GPtrArray *fields; /* Field, as the marks lie on paper: question by question, down the samples */

  FmTastingDocument *document;
  guint taster;
};

/* One number, or one line of words when @word is missing. */
typedef struct {
  FmTastingSheetForm *form;
  guint code;
  FmTastingTask task;
  guint attribute;
  GtkWidget *entry;
  GtkLabel *word; /* (nullable) what the number means */
} Field;

G_DEFINE_FINAL_TYPE (FmTastingSheetForm, fm_tasting_sheet_form, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingSheetForm *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static const char *
get_word (const Field *field, double value)
{
  if (isnan (value))
    return "";
  if (field->task == FM_TASTING_LIKING)
    return fm_tasting_liking_word ((guint)value);
  return field->task == FM_TASTING_JAR ? fm_tasting_jar_word ((guint)value) : "";
}

static void
mark_typed_cb (Field *field, double value)
{
  FmTastingSheetForm *self = field->form;
  g_autoptr (GError) error = NULL;

  if (!fm_tasting_set_mark (get_tasting (self), fm_clock_now_s (), self->taster, field->code,
                            field->task, field->attribute, value, &error)) {
    fm_number_entry_refuse (FM_NUMBER_ENTRY (field->entry), error->message);
    return;
  }
  fm_widget_set_label (field->word, get_word (field, value));
  fm_tasting_document_touch (self->document);
}

static void
take_remark (Field *field)
{
  FmTastingSheetForm *self = field->form;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (field->entry));
  const char *before = fm_tasting_remark (get_tasting (self), self->taster, field->code);

  if (g_strcmp0 (text, before != NULL ? before : "") == 0)
    return;
  fm_tasting_set_remark (get_tasting (self), fm_clock_now_s (), self->taster, field->code, text);
  fm_tasting_document_touch (self->document);
}

/* Once opened each change is written down as an event: that is for the whole remark then. */
static void
remark_typed_cb (Field *field)
{
  if (fm_tasting_is_sealed (get_tasting (field->form)))
    take_remark (field);
}

static void
cup_chosen_cb (Field *field, GtkCheckButton *button)
{
  FmTastingSheetForm *self = field->form;

  if (!gtk_check_button_get_active (button))
    return;
  fm_tasting_set_mark (get_tasting (self), fm_clock_now_s (), self->taster, field->code,
                       field->task, 0, 1.0, NULL);
  fm_tasting_document_touch (self->document);
}

/* The field that has the keyboard; the number of fields when none has. */
static guint
find_focus (FmTastingSheetForm *self)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));
  guint i = 0;

  while (i < self->fields->len &&
         (!GTK_IS_TEXT (focus) ||
          !gtk_widget_is_ancestor (focus, ((Field *)g_ptr_array_index (self->fields, i))->entry)))
    i++;
  return i;
}

/* From @at on over the fields that are typed, @step 1 or -1. */
static gboolean
move_focus (FmTastingSheetForm *self, guint at, int step)
{
  for (guint i = at + (guint)step; i < self->fields->len; i += (guint)step) {
    GtkWidget *entry = ((Field *)g_ptr_array_index (self->fields, i))->entry;

    /* Typing over a mark replaces it; words that stand there stay. */
    if (GTK_IS_ENTRY (entry))
      return gtk_entry_grab_focus_without_selecting (GTK_ENTRY (entry));
    if (!GTK_IS_CHECK_BUTTON (entry))
      return gtk_widget_grab_focus (entry);
  }
  return FALSE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *keys,
                guint key,
                guint code,
                GdkModifierType state,
                FmTastingSheetForm *self)
{
  const gboolean enter = key == GDK_KEY_Return || key == GDK_KEY_KP_Enter;
  const gboolean down = key == GDK_KEY_Down || key == GDK_KEY_KP_Down;
  const gboolean up = key == GDK_KEY_Up || key == GDK_KEY_KP_Up;
  const guint at = find_focus (self);

  if (!(enter || down || up) || at == self->fields->len)
    return FALSE;
  if (!move_focus (self, at, up ? -1 : 1) && enter)
    gtk_widget_child_focus (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self))),
                            GTK_DIR_TAB_FORWARD);
  return TRUE;
}

static Field *
add_field (
    FmTastingSheetForm *self, guint code, FmTastingTask task, guint attribute, GtkWidget *entry)
{
  Field *field = g_new0 (Field, 1);

  field->form = self;
  field->code = code;
  field->task = task;
  field->attribute = attribute;
  field->entry = entry;
  g_ptr_array_add (self->fields, field);
  return field;
}

static void
add_text (FmTastingSheetForm *self, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (self->box), label);
}

static GtkWidget *
head_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 1.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 14);
  gtk_widget_add_css_class (label, "heading");
  return label;
}

/* The next column of the grid, its head on top. @how: (nullable) */
static guint
add_column (FmTastingSheetForm *self, const char *what, const char *how)
{
  const guint column = ++self->n_columns;

  gtk_grid_attach (self->grid, head_new (what), (int)column, 0, 1, 1);
  if (how != NULL) {
    /* Translators: what is asked, what its numbers mean */
    g_autofree char *text = g_strdup_printf (_ ("%s: %s"), what, how);

    add_text (self, text, "dim-label");
  }
  return column;
}

static void
add_mark (FmTastingSheetForm *self,
          GtkWidget *cell,
          guint code,
          FmTastingTask task,
          guint attribute,
          const char *what,
          double highest)
{
  /* Translators: what is asked, code on the cup: "9-point liking of 731" */
  g_autofree char *name = g_strdup_printf (_ ("%s of %u"), what, code);
  const int decimals = task == FM_TASTING_RANK ? 1 : 0;
  GtkWidget *entry = fm_number_entry_new (name, 1.0, highest, decimals);
  GtkWidget *word = gtk_label_new (NULL);
  Field *field = add_field (self, code, task, attribute, entry);
  const double value = fm_tasting_mark (get_tasting (self), self->taster, code, task, attribute);

  g_object_set (entry, "optional", TRUE, NULL);
  fm_number_entry_set_width_chars (FM_NUMBER_ENTRY (entry), 4);
  fm_number_entry_load_value (FM_NUMBER_ENTRY (entry), value);
  g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (mark_typed_cb), field);
  field->word = GTK_LABEL (word);
  gtk_label_set_text (field->word, get_word (field, value));
  gtk_label_set_xalign (field->word, 0.0f);
  gtk_label_set_wrap (field->word, TRUE);
  gtk_label_set_max_width_chars (field->word, 14);
  gtk_widget_add_css_class (word, "caption");
  gtk_box_append (GTK_BOX (cell), entry);
  gtk_box_append (GTK_BOX (cell), word);
}

static void
add_marks (FmTastingSheetForm *self,
           FmTastingTask task,
           guint attribute,
           const char *what,
           const char *how,
           double highest)
{
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (get_tasting (self), self->taster, FM_TASTING_ROUND_MAIN);
  const guint column = add_column (self, what, how);

  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = g_ptr_array_index (cups, i);
    GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

    add_mark (self, cell, cup->code, task, attribute, what, highest > 0.0 ? highest : cups->len);
    gtk_grid_attach (self->grid, cell, (int)column, (int)i + 1, 1, 1);
  }
}

static void
add_choice (FmTastingSheetForm *self, FmTastingTask task, FmTastingRound round, const char *how)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (get_tasting (self), self->taster, round);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkCheckButton *group = NULL;

  add_text (self, fm_tasting_task_name (task), "heading");
  add_text (self, how, "dim-label");
  for (guint i = 0; i < cups->len; i++) {
    const guint code = ((const FmTastingCup *)g_ptr_array_index (cups, i))->code;
    g_autofree char *text = g_strdup_printf ("%u", code);
    GtkWidget *button = gtk_check_button_new_with_label (text);
    Field *field = add_field (self, code, task, 0, button);

    gtk_check_button_set_group (GTK_CHECK_BUTTON (button), group);
    group = GTK_CHECK_BUTTON (button);
    gtk_check_button_set_active (
        group, !isnan (fm_tasting_mark (get_tasting (self), self->taster, code, task, 0)));
    g_signal_connect_swapped (button, "toggled", G_CALLBACK (cup_chosen_cb), field);
    gtk_box_append (GTK_BOX (row), button);
  }
  gtk_box_append (GTK_BOX (self->box), row);
}

static void
add_remark (FmTastingSheetForm *self, guint code, guint column, guint row)
{
  /* Translators: code on a cup */
  g_autofree char *name = g_strdup_printf (_ ("Remark on %u"), code);
  const char *text = fm_tasting_remark (get_tasting (self), self->taster, code);
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  Field *field = add_field (self, code, FM_TASTING_REMARKS, 0, entry);

  gtk_editable_set_text (GTK_EDITABLE (entry), text != NULL ? text : "");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 16);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_widget_set_valign (entry, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (remark_typed_cb), field);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (take_remark), field);
  gtk_widget_add_controller (entry, focus);
  gtk_grid_attach (self->grid, entry, (int)column, (int)row, 1, 1);
}

static void
add_remarks (FmTastingSheetForm *self)
{
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (get_tasting (self), self->taster, FM_TASTING_ROUND_MAIN);
  const guint column = add_column (self, fm_tasting_task_name (FM_TASTING_REMARKS), NULL);

  for (guint i = 0; i < cups->len; i++)
    add_remark (self, ((const FmTastingCup *)g_ptr_array_index (cups, i))->code, column, i + 1);
}

/* The questions in the order of the paper (fm-taster-sheet.h). */
static void
add_columns (FmTastingSheetForm *self)
{
  const FmTasting *tasting = get_tasting (self);

  if ((tasting->tasks & FM_TASTING_LIKING) != 0)
    add_marks (self, FM_TASTING_LIKING, 0, fm_tasting_task_name (FM_TASTING_LIKING),
               _ ("1 dislike extremely … 9 like extremely"), 9.0);
  for (guint a = 0; (tasting->tasks & FM_TASTING_JAR) != 0 && a < tasting->attributes->len; a++)
    add_marks (self, FM_TASTING_JAR, a, g_ptr_array_index (tasting->attributes, a),
               _ ("1 much too little, 3 just about right, 5 much too much"), 5.0);
  if ((tasting->tasks & FM_TASTING_RANK) != 0)
    add_marks (self, FM_TASTING_RANK, 0, fm_tasting_task_name (FM_TASTING_RANK),
               _ ("1 for the best; samples that tie get the same number"), 0.0);
  if ((tasting->tasks & FM_TASTING_REMARKS) != 0)
    add_remarks (self);
}

/* The codes stand in the order in which this taster got the samples, as on the paper. */
static void
add_codes (FmTastingSheetForm *self)
{
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (get_tasting (self), self->taster, FM_TASTING_ROUND_MAIN);

  gtk_grid_attach (self->grid, head_new (_ ("Sample")), 0, 0, 1, 1);
  for (guint i = 0; i < cups->len; i++) {
    g_autofree char *text =
        g_strdup_printf ("%u", ((const FmTastingCup *)g_ptr_array_index (cups, i))->code);
    GtkWidget *label = gtk_label_new (text);

    gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
    gtk_label_set_width_chars (GTK_LABEL (label), 4);
    gtk_widget_set_valign (label, GTK_ALIGN_START);
    gtk_widget_set_margin_top (label, 8);
    gtk_widget_add_css_class (label, "numeric");
    gtk_grid_attach (self->grid, label, 0, (int)i + 1, 1, 1);
  }
}

static void
add_grid (FmTastingSheetForm *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->grid = GTK_GRID (gtk_grid_new ());
  self->n_columns = 0;
  gtk_grid_set_column_spacing (self->grid, 12);
  gtk_grid_set_row_spacing (self->grid, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_AUTOMATIC,
                                  GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->grid));
  add_codes (self);
  add_columns (self);
  gtk_box_append (GTK_BOX (self->box), scroller);
}

static void
fill (FmTastingSheetForm *self)
{
  const FmTasting *tasting = get_tasting (self);
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, self->taster, FM_TASTING_ROUND_MAIN);

  if (cups->len > 0)
    add_grid (self);
  if ((tasting->tasks & FM_TASTING_PREFERENCE) != 0)
    add_choice (self, FM_TASTING_PREFERENCE, FM_TASTING_ROUND_PAIR, _ ("The sample preferred"));
  if ((tasting->tasks & FM_TASTING_TRIANGLE) != 0)
    add_choice (self, FM_TASTING_TRIANGLE, FM_TASTING_ROUND_TRIANGLE,
                _ ("The odd sample of three"));
}

/* A remark still being typed is taken before its field goes. */
static void
empty (FmTastingSheetForm *self)
{
  GtkWidget *child;

  for (guint i = 0; self->document != NULL && i < self->fields->len; i++) {
    Field *field = g_ptr_array_index (self->fields, i);

    if (field->task == FM_TASTING_REMARKS)
      take_remark (field);
  }
  /* The fields outlive their widgets, which may yet tell that they lose the focus. */
  while (self->box != NULL && (child = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_box_remove (GTK_BOX (self->box), child);
  g_ptr_array_set_size (self->fields, 0);
  self->grid = NULL;
}

static void
fm_tasting_sheet_form_dispose (GObject *object)
{
  FmTastingSheetForm *self = FM_TASTING_SHEET_FORM (object);

  empty (self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (fm_tasting_sheet_form_parent_class)->dispose (object);
}

static void
fm_tasting_sheet_form_finalize (GObject *object)
{
  g_ptr_array_unref (FM_TASTING_SHEET_FORM (object)->fields);
  G_OBJECT_CLASS (fm_tasting_sheet_form_parent_class)->finalize (object);
}

static void
fm_tasting_sheet_form_class_init (FmTastingSheetFormClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_tasting_sheet_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_tasting_sheet_form_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_tasting_sheet_form_init (FmTastingSheetForm *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->fields = g_ptr_array_new_with_free_func (g_free);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

void
fm_tasting_sheet_form_show (FmTastingSheetForm *self, FmTastingDocument *document, guint taster)
{
  g_return_if_fail (FM_IS_TASTING_SHEET_FORM (self));
  empty (self);
  g_set_object (&self->document, document);
  self->taster = taster;
  if (document == NULL)
    return;
  fill (self);
  gtk_widget_set_sensitive (self->box, fm_tasting_document_is_editable (document));
}

char *
fm_tasting_sheet_form_get_trouble (FmTastingSheetForm *self)
{
  g_return_val_if_fail (FM_IS_TASTING_SHEET_FORM (self), NULL);
  for (guint i = 0; i < self->fields->len; i++) {
    const Field *field = g_ptr_array_index (self->fields, i);

    if (FM_IS_NUMBER_ENTRY (field->entry) &&
        !fm_number_entry_is_valid (FM_NUMBER_ENTRY (field->entry)))
      return g_strdup_printf (_ ("Sample %u: %s"), field->code,
                              fm_number_entry_get_message (FM_NUMBER_ENTRY (field->entry)));
  }
  return NULL;
}

void
fm_tasting_sheet_form_focus (FmTastingSheetForm *self)
{
  g_return_if_fail (FM_IS_TASTING_SHEET_FORM (self));
  if (self->fields->len > 0)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}
