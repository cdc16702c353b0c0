using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace AxleRisk.App.Screens.Views;

/// <summary>A form on the terminal: fields on the left with their refusals below them, the picture on the right.</summary>
internal sealed class FormDialog : Dialog
{
    private const int LabelWidth = 15;
    private const int FieldWidth = 24;
    private const int LeftWidth = 48;

    /// <summary>The rows below the fields: the first refusal in full, and the buttons.</summary>
    private const int RowsBelow = 3;

    /// <summary>The rows that the fields cannot have: margins, border, and those below.</summary>
    private const int RowsAround = 4 + RowsBelow;

    private const string Leave = "_Leave";

    private readonly Form form;
    private readonly View fields = new() { Width = LeftWidth, Height = Dim.Fill(RowsBelow), CanFocus = true };
    private readonly LinesView picture;
    private readonly LinesView reason;
    private readonly int room;
    private int arrangement;
    private int pitch = 2;

    /// <summary>Creates the window.</summary>
    /// <param name="form">The form.</param>
    /// <param name="screenHeight">Rows of the terminal.</param>
    public FormDialog(Form form, int screenHeight)
    {
        this.form = form;
        room = screenHeight - RowsAround;
        HotKeySpecifier = Look.NoHotKey;
        Title = form.Title;
        Width = Dim.Fill(1);
        Height = Dim.Fill(1);
        X = 1;
        Y = 1;
        picture = new LinesView(form.Picture) { X = LeftWidth + 1, Width = Dim.Fill(), Height = Dim.Fill(RowsBelow) };
        reason = new LinesView(Reason) { Y = Pos.AnchorEnd(RowsBelow - 1), Width = Dim.Fill(), Height = RowsBelow - 1 };
        Add(fields, picture, reason);
        AddButton(new Button { Text = Leave });
        AddButton(new Button { Text = "_OK" });
        Build(0);
    }

    /// <summary>Whether the form was accepted.</summary>
    public bool IsAccepted { get; private set; }

    /// <inheritdoc/>
    protected override bool OnAccepting(CommandEventArgs args)
    {
        if (args.Context?.TryGetSource(out View? source) == true && source is Button { Text: Leave })
        {
            return base.OnAccepting(args);
        }

        if (!form.IsRight)
        {
            Renew();
            return true;
        }

        IsAccepted = true;
        return base.OnAccepting(args);
    }

    private void Build(int focused)
    {
        arrangement = form.Arrangement;
        fields.RemoveAll();
        pitch = 2 * form.Fields.Count <= room ? 2 : 1;
        for (int i = 0; i < form.Fields.Count; i++)
        {
            AddField(i, form.Fields[i]);
        }

        fields.SubViews.Where(v => v.CanFocus).ElementAtOrDefault(focused)?.SetFocus();
    }

    private void AddField(int index, FormField field)
    {
        int row = pitch * index;
        View entry;
        if (field.Choices is { } choices)
        {
            var choice = new ChoiceField(choices, field.Text) { X = LabelWidth + 1, Y = row, Width = FieldWidth };
            choice.Chosen += text => Set(index, text);
            entry = choice;
        }
        else
        {
            var text = new TextField { X = LabelWidth + 1, Y = row, Width = FieldWidth, Text = field.Text };
            text.ValueChanged += (_, e) => Set(index, e.NewValue ?? "");
            entry = text;
        }

        fields.Add(
            new LinesView((w, _) => [PageLine.Of(TextTable.Shorten(field.Label, w))]) { Y = row, Width = LabelWidth, Height = 1 },
            entry,
            new LinesView((_, _) => [Remark(field)])
            {
                X = LabelWidth + FieldWidth + 2,
                Y = row,
                Width = LeftWidth - LabelWidth - FieldWidth - 2,
                Height = 1,
            },
            new LinesView((w, _) => [PageLine.Of(field.Refusal is { } r ? TextTable.Shorten("^ " + r, w) : "", Ink.Warning)])
            {
                X = LabelWidth + 1,
                Y = row + 1,
                Width = LeftWidth - LabelWidth - 1,
                Height = 1,
                Visible = pitch > 1,
            });
    }

    /// <summary>
    /// Behind the field: its unit; a word where there is no row below it for the reason, which then stands at the bottom.
    /// </summary>
    private PageLine Remark(FormField field) =>
        pitch == 1 && field.Refusal is not null ? PageLine.Of("wrong", Ink.Warning)
        : PageLine.Of(field.Choices is null ? field.Unit : "", Ink.Quiet);

    private void Set(int index, string text)
    {
        form.Set(index, text);
        if (form.Arrangement != arrangement)
        {
            Build(index);
        }

        Renew();
    }

    private void Renew()
    {
        fields.SetNeedsDraw();
        foreach (View view in fields.SubViews)
        {
            view.SetNeedsDraw();
        }

        picture.SetNeedsDraw();
        reason.SetNeedsDraw();
    }

    private PageLine[] Reason(int width, int height) => form.FirstRefusal is { } refusal
        ? [.. Wrap.Lines("Not right: " + refusal, width, "").Select(l => PageLine.Of(l, Ink.Warning))]
        : [PageLine.Of("Tab: next field. Enter: accept. Esc: leave. < >: left, right or a letter.", Ink.Quiet)];
}
