using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>How an input is edited.</summary>
internal enum InputKind
{
    /// <summary>A number or a distribution: <see cref="ValueForm"/>.</summary>
    Quantity,

    /// <summary>A number that cannot be uncertain.</summary>
    Number,

    /// <summary>A text.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Word,

    /// <summary>The category of the weld detail: one, or several with weights.</summary>
    Category,

    /// <summary>The share of a leg: <see cref="RoadMix"/>.</summary>
    Share,

    /// <summary>An element of a list: a correlation, a piece of evidence, a remedy.</summary>
    Element,
}

/// <summary>One input of a scenario as a table shows it.</summary>
/// <param name="Path">Where it stands in the file.</param>
/// <param name="Name">Its name among the inputs, in full: <c>legs.gravel.speed_km_per_h</c>.</param>
/// <param name="Label">Its name within its group, in plain words.</param>
/// <param name="Kind">How it is edited.</param>
/// <param name="ValueText">Its value, as stated; a choice as states with percents.</param>
/// <param name="Unit">The unit as printed; empty for a pure number.</param>
/// <param name="IsStated">Whether the file states it; otherwise its default holds.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Allowed">What it may be, in words.</param>
internal sealed record InputRow(
    TomlPath Path, string Name, string Label, InputKind Kind, string ValueText, string Unit, bool IsStated, string Meaning, string Allowed)
{
    /// <summary>What holds where it is not stated, and why; null where it must be stated.</summary>
    public string? Default { get; init; }

    /// <summary>Whether it is a factor of the study, and of which kind; null where it is certain.</summary>
    public Knowledge? Factor { get; init; }

    /// <summary>The quantity, for a number or distribution.</summary>
    public Quantity? Quantity { get; init; }

    /// <summary>The words to choose from; empty for other kinds.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Whether it can be taken out of the file, so that the default holds.</summary>
    public bool CanReset => IsStated && Default is not null;
}

/// <summary>Inputs that belong together.</summary>
/// <param name="Title">The heading.</param>
/// <param name="Rows">The inputs, in the order of the file.</param>
internal sealed record InputGroup(string Title, IReadOnlyList<InputRow> Rows);
