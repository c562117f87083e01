/* fm-formula-page.c - the lines of the shown formula, the brief and the live numbers */
#include "app/fm-formula-page.h"

struct _FmFormulaPage {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmFormulaPage, fm_formula_page, GTK_TYPE_WIDGET)

static void
fm_formula_page_dispose (GObject *object)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_FORMULA_PAGE);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_formula_page_parent_class)->dispose (object);
}

static void
fm_formula_page_class_init (FmFormulaPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_formula_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-formula-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_formula_page_init (FmFormulaPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_formula_page_set_session (FmFormulaPage *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
