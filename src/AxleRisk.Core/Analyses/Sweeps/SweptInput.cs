using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Sweeps;

/// <summary>One input to be moved over a range, all else as stated.</summary>
/// <param name="Input">Its name: that of an input of the scenario, <c>detail.category</c> or
/// <c>detail.environment</c>.</param>
/// <param name="From">Where the range begins: a number, or a word.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Steps">The number of steps between, at least 1; of words each is a step.</param>
public sealed record SweptInput(string Input, string From, string To, int Steps = SweptInput.UsualSteps)
{
    /// <summary>Steps unless asked otherwise.</summary>
    public const int UsualSteps = 8;

    /// <summary>The most steps.</summary>
    public const int MostSteps = 40;

    /// <summary>The range that an input is moved over where nobody states one: about half to double, or its spread.</summary>
    public static SweptInput Usual(Scenario scenario, string input)
    {
        if (scenario.WordNames.Contains(input))
        {
            ImmutableArray<string> all = WordsOf(scenario, input);
            int at = all.IndexOf(scenario.FindWords(input)?.Nominal ?? all[0]);
            return new(input, all[Math.Max(0, at - 2)], all[Math.Min(all.Length - 1, at + 2)]);
        }

        Input of = Find(scenario, input);
        (double low, double high) = of.Value is Value.Uncertain { Distribution: { } spread }
            ? (spread.Quantile(0.01), spread.Quantile(0.99)) : (of.Value.Nominal / 2, 2 * of.Value.Nominal);
        Domain domain = of.Quantity.Domain;
        return low < high
            ? new(input, Short(Math.Max(low, domain.Low)), Short(Math.Min(high, domain.High)))
            : new(input, "0", double.IsFinite(domain.High) ? Short(domain.High) : "1");
    }

    /// <summary>The points of the range, in order.</summary>
    /// <exception cref="StudyException">There is no such input, or the range is none for it.</exception>
    internal ImmutableArray<SweepValue> Points(Scenario scenario) =>
        IsOfWords(scenario) ? Words(scenario) : Numbers(scenario);

    /// <summary>The unit of its values.</summary>
    internal string Unit(Scenario scenario) => IsOfWords(scenario) ? "" : Find(scenario, Input).Quantity.Unit;

    /// <summary>Its value in the base case, as a point of the range; NaN for a word.</summary>
    internal double Stated(Scenario scenario) => IsOfWords(scenario) ? double.NaN : Find(scenario, Input).Value.Nominal;

    private ImmutableArray<SweepValue> Numbers(Scenario scenario)
    {
        Domain domain = Find(scenario, Input).Quantity.Domain;
        double[] ends = [Number(From), Number(To)];
        return ends.FirstOrDefault(e => !domain.Contains(e), double.NaN) is var wrong && !double.IsNaN(wrong)
            ? throw new StudyException($"{Input} must be {domain.Describe()}, not {wrong:G6}")
            : ends[0] >= ends[1] ? throw new StudyException($"the range of {Input} must go upward, not from {From} to {To}")
            : [.. Enumerable.Range(0, Steps + 1).Select(i => At(Short(ends[0] + ((ends[1] - ends[0]) * i / Steps))))];
    }

    private SweepValue At(string text)
    {
        double x = double.Parse(text);
        return new SweepValue(text, x, new Change.ToValue(Input, new Value.Certain(x)));
    }

    private bool IsOfWords(Scenario scenario) => scenario.WordNames.Contains(Input);

    private ImmutableArray<SweepValue> Words(Scenario scenario)
    {
        string called = Input[(Input.LastIndexOf('.') + 1)..];
        ImmutableArray<string> all = WordsOf(scenario, Input);
        (int first, int last) = (all.IndexOf(From), all.IndexOf(To));
        return first < 0 || last < 0
            ? throw new StudyException(
                $"{scenario.DetailOf(Input)!.Catalogue} has no {called} \"{(first < 0 ? From : To)}\"; it has {string.Join(", ", all)}")
            : first >= last ? throw new StudyException($"the range of {Input} must go from a better {called} to a worse one")
            : [.. all[first..(last + 1)].Select((c, i) =>
                new SweepValue(c, first + i, new Change.ToWord(Input, WordChoice.Sure(c))))];
    }

    private static ImmutableArray<string> WordsOf(Scenario scenario, string input)
    {
        Detail detail = scenario.DetailOf(input)!;
        string catalogue = detail.Catalogue;
        ImmutableArray<string> all = CheckedSection.FirstName(input) == Change.EnvironmentName
            ? SnCatalogue.Environments(catalogue) : SnCatalogue.Categories(catalogue);
        return detail.IsOwn ? throw new StudyException($"the S-N curve is the scenario's own: {input} cannot be swept")
            : all.Length > 1 ? all : throw new StudyException($"{catalogue} tells of {all[0]} alone: {input} cannot be swept");
    }

    private double Number(string text) => double.TryParse(text, out double x) && double.IsFinite(x)
        ? x : throw new StudyException($"the range of {Input} needs numbers, such as {Input}=10..100, not \"{text}\"");

    private static Input Find(Scenario scenario, string name) => scenario.Inputs.FirstOrDefault(i => i.Name == name)
        ?? throw new StudyException(
            $"there is no input \"{name}\"; {Near(scenario, name)}");

    private static string Near(Scenario scenario, string name)
    {
        string last = name.Split('.')[^1];
        string[] alike =
        [
            .. scenario.Inputs.Select(i => i.Name).Where(n => last.Length > 2 && n.Contains(last, StringComparison.Ordinal)).Take(4),
        ];
        return alike.Length > 0 ? $"there is {string.Join(", ", alike)}" : "axlerisk check lists them all";
    }

    /// <summary>Four figures: a value that can be read is worth more than an even step.</summary>
    private static string Short(double x) => double.Parse(x.ToString("G4")).ToString("0.##########");
}

/// <summary>One value of a swept input.</summary>
/// <param name="Text">As it is written.</param>
/// <param name="Place">Where it stands on an axis.</param>
/// <param name="Change">What it changes.</param>
internal readonly record struct SweepValue(string Text, double Place, Change Change);
