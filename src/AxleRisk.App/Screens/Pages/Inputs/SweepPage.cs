using System.Collections.Immutable;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>One input moved over a range, or two: opened from the list of inputs.</summary>
internal sealed class SweepPage : AnswerPage<ImmutableArray<SweptInput>, SweepResult>
{
    private ImmutableArray<SweptInput> inputs;

    /// <summary>Opens the page; its range is one that makes sense for the input.</summary>
    public SweepPage(Session session, IDialogs dialogs, string input)
        : base(session, dialogs, StudyBook.Sweep, "Sweep") =>
        inputs = [SweptInput.Usual(session.Document.Scenario, input)];

    public override IReadOnlyList<KeyHint> Keys => [new("Esc", "back"), new("i", "range"), .. base.Keys];

    protected override ImmutableArray<SweptInput> Question => inputs;

    protected override string? Unavailable => null;

    /// <summary>Whether an input is one that can be moved.</summary>
    public static bool CanMove(Session session, string input) =>
        session.Document.Scenario is var scenario && (scenario.Inputs.Any(i => i.Name == input)
            || (scenario.DetailOf(input) is { IsOwn: false } detail
                && (CheckedSection.FirstName(input) == Change.CategoryName || SnCatalogue.Environments(detail.Catalogue).Length > 1)));

    public override bool Press(PageKey key)
    {
        if (key.Character == 'i')
        {
            AskRange();
            return true;
        }

        return base.Press(key);
    }

    private void AskRange()
    {
        string present = string.Join(' ', inputs.Select(SweptInputs.Write));
        string? text = Dialogs.Ask(
            "Range", "The input and its range; behind a space a second input, and both are moved. Such as axle.wall_mm=5..9, or axle.wall_mm=5..9:20 for 20 steps.",
            present, t => Parse(t).Refusal);
        if (text is not null)
        {
            inputs = Parse(text).Inputs;
            Start();
        }
    }

    private (ImmutableArray<SweptInput> Inputs, string? Refusal) Parse(string text)
    {
        SweptInput?[] parsed = [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(SweptInputs.Parse)];
        if (parsed is not [not null] and not [not null, not null])
        {
            return ([], "one or two of KEY=FROM..TO");
        }

        try
        {
            ImmutableArray<SweptInput> named = [.. parsed.Select(p => p!)];
            _ = SweepAnalysis.CasesOf(Session.Document.Scenario, named);
            return (named, null);
        }
        catch (StudyException e)
        {
            return ([], e.Message);
        }
    }
}
