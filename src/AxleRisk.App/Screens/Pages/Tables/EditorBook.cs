using System.Collections.Immutable;
using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>The fields for each kind of key; a further kind is one more line here.</summary>
/// <param name="session">The open scenario.</param>
/// <param name="table">The table whose keys they are.</param>
/// <param name="path">Where it stands.</param>
internal sealed class EditorBook(Session session, TableFormat table, TomlPath path)
{
    private Scenario Scenario => session.Document.Scenario;

    // Those that the file can name.
    private IEnumerable<Factor> Factors =>
        session.Model.Factors.Factors.Where(f => (f is ScalarFactor or WordFactor) && !Stretches.IsNameOf(f.Name));

    /// <summary>The inputs that a change may name: those of a trip only under the trip.</summary>
    private IEnumerable<Input> Inputs =>
        path.Parts is [{ Key: "trip" }, ..] ? Scenario.Inputs.Concat(Scenario.Trip?.Inputs ?? []) : Scenario.Inputs;

    /// <summary>The fields of a key; null for a table of its own, which has a form of its own.</summary>
    /// <param name="key">The key.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    /// <param name="others">What other keys of the table state now.</param>
    public KeyEditor? Of(KeyFormat key, TomlValue? stated, Func<string, TomlValue?> others) => key.Kind switch
    {
        KeyKind.Table or KeyKind.Tables => null,
        KeyKind.Uncertain => new ValueEditor(session, key, stated),
        KeyKind.Word word => new ChoiceEditor(key, stated, Words(word.Words)),
        KeyKind.WordOrChoice word => new ChoiceEditor(key, stated, Words(word.Words)),
        KeyKind.Text { IsUsualLeg: true } => new ChoiceEditor(key, stated, Words(Scenario.Legs.Select(l => l.Name))),
        KeyKind.InputName => new ChoiceEditor(key, stated, Named(table.Keys.Any(k => k.Kind is KeyKind.State) ? Choices : Continuous)),
        KeyKind.State => new ChoiceEditor(key, stated, StatesOf(others)),
        KeyKind.Category => new ChoiceEditor(key, stated, Words(CategoriesOf(others))),
        KeyKind.InputPair => new PairEditor(key, stated, Named(Continuous)),
        KeyKind.Conditions => new RowsEditor(key, stated, Named(Factors), Condition),
        KeyKind.Changes => new RowsEditor(key, stated,
            [
                .. Inputs.Select(i => new Answer(i.Label, TomlValue.Of(i.Name))),
                .. Scenario.WordNames.Where(n => WordsOf(n).Length > 1)
                    .Select(n => new Answer(WordFactor.LabelOfName(n)!, TomlValue.Of(n))),
            ],
            Changed),
        KeyKind.Text when stated is TomlValue.Text text && text.Value.Contains('\n') => null,
        KeyKind.Text or KeyKind.Line or KeyKind.PlainName or KeyKind.Number or KeyKind.Whole or KeyKind.Numbers or KeyKind.SomeWords
            or KeyKind.Texts =>
            new TypedEditor(key, stated),
        _ => null,
    };

    /// <summary>Whether what a key can be depends on another key.</summary>
    public static bool DependsOn(KeyFormat key, KeyFormat other) => (key.Kind, other.Kind) switch
    {
        (KeyKind.State, KeyKind.InputName) => true,
        (KeyKind.Category, KeyKind.Word) => other.Key == Catalogue,
        _ => false,
    };

    private const string Catalogue = "catalogue";

    private IEnumerable<Factor> Choices => Factors.Where(f => f.Distribution is NumberChoice);

    private IEnumerable<Factor> Continuous => Factors.Where(f => f is ScalarFactor { Distribution.IsContinuous: true });

    private static Answer[] Words(IEnumerable<string> words) => [.. words.Select(w => new Answer(w, TomlValue.Of(w)))];

    private static Answer[] Named(IEnumerable<Factor> factors) => [.. factors.Select(f => new Answer(f.Label, TomlValue.Of(f.Name)))];

    private static Answer[] States(Factor? factor) => factor?.Distribution is NumberChoice choice
        ? [.. choice.Values.Select(v =>
            new Answer(factor.Show(v), factor is WordFactor ? TomlValue.Of(factor.Show(v)) : TomlValue.Of(v)))]
        : [];

    private Answer[] StatesOf(Func<string, TomlValue?> others) =>
        States(table.Keys.FirstOrDefault(k => k.Kind is KeyKind.InputName) is { } named && others(named.Key) is TomlValue.Text name
            ? Factors.FirstOrDefault(f => f.Name == name.Value) : Choices.FirstOrDefault());

    private ImmutableArray<string> CategoriesOf(Func<string, TomlValue?> others) =>
        SnCatalogue.Categories(others(Catalogue) is TomlValue.Text catalogue ? catalogue.Value : Scenario.Detail.Catalogue);

    private IInputRow Condition(string name, TomlValue? stated) => Factors.FirstOrDefault(f => f.Name == name) switch
    {
        { Distribution: NumberChoice } choice => new StateRow(States(choice), stated),
        var factor => new RangeRow(factor?.Unit ?? "", stated),
    };

    private IInputRow Changed(string name, TomlValue? stated) => Inputs.FirstOrDefault(i => i.Name == name) is { } input
        ? new ChangeRow(session, input, stated)
        : new StateRow(Words(WordsOf(name)), stated);

    private ImmutableArray<string> WordsOf(string name) => Scenario.DetailOf(name)!.Catalogue is var catalogue
        && CheckedSection.FirstName(name) == Change.EnvironmentName
            ? SnCatalogue.Environments(catalogue) : SnCatalogue.Categories(catalogue);
}
