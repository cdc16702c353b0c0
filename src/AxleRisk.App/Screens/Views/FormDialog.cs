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
    private const int LeastLabel = 15, MostLabel = 22;
    private const int FieldWidth = 24;
    private const int UnitWidth = 7;
    private const int HelpWidth = 66;

    /// <summary>The rows below the fields: the first refusal in full, and the buttons.</summary>
    private const int RowsBelow = 3;

    /// <summary>The rows that the fields cannot have: margins, border, and those below.</summary>
    private const int RowsAround = 4 + RowsBelow;

    private const string Leave = "_Leave";

    private readonly Form form;
    private readonly Func<IDialogs> dialogs;
    private readonly View fields;
    private readonly LinesView picture;
    private readonly LinesView reason;
    private readonly int room;
    private readonly int labelWidth;
    private int arrangement;
    private int pitch = 2;
    private bool isTyping;

    /// <summary>Creates the window.</summary>
    /// <param name="form">The form.</param>
    /// <param name="screenHeight">Rows of the terminal.</param>
    /// <param name="dialogs">Opens a form for a field of this one.</param>
    public FormDialog(Form form, int screenHeight, Func<IDialogs> dialogs)
    {
        this.form = form;
        this.dialogs = dialogs;
        labelWidth = Math.Clamp(form.Fields.Select(f => f.Label.Length).DefaultIfEmpty().Max(), LeastLabel, MostLabel);
        room = screenHeight - RowsAround;
        HotKeySpecifier = Look.NoHotKey;
        Title = form.Title;
        Width = Dim.Fill(1);
        Height = Dim.Fill(1);
        X = 1;
        Y = 1;
        fields = new View { Width = LeftWidth, Height = Dim.Fill(RowsBelow), CanFocus = true };
        picture = new LinesView(form.Picture) { X = LeftWidth + 1, Width = Dim.Fill(), Height = Dim.Fill(RowsBelow) };
        reason = new LinesView(Reason) { Y = Pos.AnchorEnd(RowsBelow - 1), Width = Dim.Fill(), Height = RowsBelow - 1 };
        Add(fields, picture, reason);
        AddButton(new Button { Text = Leave });
        AddButton(new Button { Text = "_OK" });
        Build(form.Focused);
    }

    /// <summary>Whether the form was accepted.</summary>
    public bool IsAccepted { get; private set; }

    private int LeftWidth => labelWidth + FieldWidth + UnitWidth + 2;

    /// <inheritdoc/>
    protected override bool OnKeyDown(Key key)
    {
        bool opens = key == Key.F2 && form.Open(dialogs());
        if (opens)
        {
            Build(form.Focused);
            Renew();
            return true;
        }

        if (key == Key.F1)
        {
            Explain();
            return true;
        }

        return base.OnKeyDown(key);
    }

    /// <inheritdoc/>
    protected override bool OnAccepting(CommandEventArgs args)
    {
        if (args.Context?.TryGetSource(out View? source) == true && source is Button { Text: Leave })
        {
            return base.OnAccepting(args);
        }

        if (!form.Try())
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

        fields.SetContentSize(new System.Drawing.Size(LeftWidth, Math.Max(1, pitch * form.Fields.Count)));
        fields.SubViews.Where(v => v.CanFocus).ElementAtOrDefault(focused)?.SetFocus();
    }

    /// <summary>
    /// A field is filled in now: what stands in it is marked, so that typing takes its place, unless other fields came while it was
    /// typed.
    /// </summary>
    private void Focus(int index, View entry)
    {
        form.Focused = index;
        int row = pitch * index, height = Math.Max(1, fields.Viewport.Height);
        int top = Math.Clamp(fields.Viewport.Y, Math.Max(0, row - height + 1), row);
        if (top != fields.Viewport.Y)
        {
            fields.Viewport = fields.Viewport with { Y = top };
        }

        if (isTyping)
        {
            (entry as TextField)?.MoveEnd();
        }
        else
        {
            (entry as TextField)?.SelectAll();
        }

        Renew();
    }

    /// <summary>Tells what the chosen field is.</summary>
    private void Explain()
    {
        FormField field = form.Fields[Math.Clamp(form.Focused, 0, form.Fields.Count - 1)];
        string help = field.Help.Length > 0 ? field.Help
            : string.Join('\n', form.Picture(HelpWidth, 20).Select(l => l.Text.TrimEnd()));
        dialogs().Choose(field.Label, help, "Back");
    }

    private void AddField(int index, FormField field)
    {
        int row = pitch * index;
        View entry;
        if (field.Choices is { } choices)
        {
            var choice = new ChoiceField(choices, field.Text) { X = labelWidth + 1, Y = row, Width = FieldWidth };
            choice.Chosen += text => Set(index, text);
            choice.Asked += Explain;
            entry = choice;
        }
        else
        {
            var text = new TextField { X = labelWidth + 1, Y = row, Width = FieldWidth, Text = field.Text };
            text.ValueChanged += (_, e) => Set(index, e.NewValue ?? "");
            text.KeyDown += (_, key) =>
            {
                // No number has this sign; a text may, behind its beginning.
                if (key == (Key)'?' && (field.IsNumber || text.Text.Length == 0))
                {
                    key.Handled = true;
                    Explain();
                }
            };
            entry = text;
        }

        entry.HasFocusChanged += (_, e) =>
        {
            if (e.NewValue)
            {
                Focus(index, entry);
            }
        };
        fields.Add(
            new LinesView((w, _) => [PageLine.Of(TextTable.Shorten([.. form.Fields.Select(f => f.Label)], w)[index])])
            {
                Y = row,
                Width = labelWidth,
                Height = 1,
            },
            entry,
            new LinesView((_, _) => [Remark(field)])
            {
                X = labelWidth + FieldWidth + 2,
                Y = row,
                Width = UnitWidth,
                Height = 1,
            },
            new LinesView((w, _) => [PageLine.Of(form.Told(field) is { } r ? TextTable.Shorten("^ " + r, w) : "", Ink.Warning)])
            {
                X = labelWidth + 1,
                Y = row + 1,
                Width = LeftWidth - labelWidth - 1,
                Height = 1,
                Visible = pitch > 1,
            });
    }

    /// <summary>
    /// Behind the field: its unit; a word where there is no row below it for the reason, which then stands at the bottom.
    /// </summary>
    private PageLine Remark(FormField field) =>
        pitch == 1 && form.Told(field) is not null ? PageLine.Of("wrong", Ink.Warning)
        : PageLine.Of(field.Choices is null ? field.Unit : "", Ink.Quiet);

    private void Set(int index, string text)
    {
        FormField field = form.Fields[index];
        form.Set(index, text);
        if (form.Arrangement != arrangement)
        {
            isTyping = true;
            Build(form.Fields.ToList().FindIndex(f => f == field) is >= 0 and var place ? place : index);
            isTyping = false;
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

    private PageLine[] Reason(int width, int height) => form.FirstTold is { } refusal
        ? [.. Wrap.Lines("Not right: " + refusal, width, "").Select(l => PageLine.Of(l, Ink.Warning))]
        :
        [
            PageLine.Of("Tab: next field. Enter: accept. Esc: leave. < >: left, right or a letter.", Ink.Quiet),
            PageLine.Of(form.Opens.Length > 0 ? $"?: what it is. F2: {form.Opens}." : "?: what the field is.", Ink.Quiet),
        ];
}
