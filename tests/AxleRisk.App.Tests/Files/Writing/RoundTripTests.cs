using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

/// <summary>Random edits of the shipped scenarios: what was stated is read back, the rest of the text stays as it was.</summary>
public class RoundTripTests
{
    private static readonly string[] Texts = [.. Repository.Scenarios.Select(File.ReadAllText)];
    private static readonly Scenario[] Scenarios = [.. Texts.Select(Read)];

    [Property(MaxTest = 60)]
    public Property A_number_is_read_back_and_only_its_line_changes() => Prop.ForAll(Numbers().ToArbitrary(), c =>
    {
        string edited = ScenarioEditor.Apply(Texts[c.File], ScenarioEdit.Set(ScenarioEdits.PathOf(c.Input), TomlValue.Of(c.Number)));
        Place wasThere = new(Texts[c.File], edited);
        bool readBack = TryRead(edited) is not Scenario read || read.Inputs.Single(i => i.Name == c.Input.Name) is
        { IsDefault: false, Value: Value.Certain v } && v.Number.Equals(c.Number);
        return readBack.Label("read back").And((wasThere.OldLines <= 1).Label($"{wasThere.OldLines} old lines changed"))
            .And(KeepsComments(Texts[c.File], edited));
    });

    [Property(MaxTest = 60)]
    public Property What_is_set_back_leaves_the_text_as_it_was() => Prop.ForAll(Numbers().ToArbitrary(), c =>
    {
        TomlPath path = ScenarioEdits.PathOf(c.Input);
        TomlValue? old = ScenarioEditor.Read(Texts[c.File], path);
        string edited = ScenarioEditor.Apply(Texts[c.File], ScenarioEdit.Set(path, TomlValue.Of(c.Number)));
        string back = ScenarioEditor.Apply(edited, old is null ? ScenarioEdit.Remove(path) : ScenarioEdit.Set(path, old));

        // A section made for one key stays, empty.
        return (back == Texts[c.File] || (old is null && back.Replace("\n[fatigue]\n", "") == Texts[c.File].Replace("\n[fatigue]\n", "")))
            .Label(back);
    });

    [Property(MaxTest = 20)]
    public Property Many_edits_keep_every_comment_and_the_text_readable() => Prop.ForAll(
        Gen.Choose(0, Texts.Length - 1).SelectMany(f => Gen.ListOf(Step(f), 6).Select(steps => (f, steps))).ToArbitrary(),
        c =>
        {
            string text = Texts[c.f];
            foreach (Func<Scenario, ScenarioEdit> step in c.steps)
            {
                string next = ScenarioEditor.Apply(text, step(Read(text)));

                // As in the console: what the reader refuses does not happen.
                text = TryRead(next) is null ? text : next;
            }

            return KeepsComments(Texts[c.f], text).And(Read(text).Inputs.Length > 0);
        });

    private static Gen<(int File, Input Input, double Number)> Numbers() =>
        from file in Gen.Choose(0, Texts.Length - 1)
        from input in Gen.Elements(Scenarios[file].Inputs.AsEnumerable())
        from number in Number(input.Quantity.Domain)
        select (file, input, number);

    private static Gen<double> Number(Domain domain) => double.IsInfinity(domain.High)
        ? Gen.Choose(1, 9999).SelectMany(i => Gen.Choose(-6, 3).Select(e => i * Math.Pow(10, e)))
        : Gen.Choose(1, 999).Select(i => domain.Low + ((domain.High - domain.Low) * i / 1000.0));

    // An edit of the scenario as it is by then: what an earlier one took out is not there.
    private static Gen<Func<Scenario, ScenarioEdit>> Step(int file)
    {
        Scenario scenario = Scenarios[file];
        Gen<Input> input = Gen.Elements(scenario.Inputs.AsEnumerable());
        Gen<Func<Scenario, ScenarioEdit>> Always(Gen<ScenarioEdit> edits) => edits.Select(e => (Func<Scenario, ScenarioEdit>)(_ => e));
        return Gen.OneOf(
            Always(input.SelectMany(i =>
                Number(i.Quantity.Domain).Select(x => ScenarioEdit.Set(ScenarioEdits.PathOf(i), TomlValue.Of(x))))),
            Always(input.SelectMany(i => Number(i.Quantity.Domain).Select(x => ScenarioEdit.Set(ScenarioEdits.PathOf(i), Uniform(x))))),
            Always(input.Select(i => ScenarioEdit.Remove(ScenarioEdits.PathOf(i)))),
            Always(Gen.ListOf(Gen.Choose(1, 100), scenario.Legs.Length)
                .Select(s => ScenarioEdits.RoadMix([.. s.Select(p => (double)p)]))),
            Gen.Choose(-90, 90).Select(r => (Func<Scenario, ScenarioEdit>)(now =>
                ScenarioEdits.Correlation(now, "vehicle.payload_kg", "use.speed_factor", r / 100.0))),
            Always(Gen.Choose(1, 100).Select(km => ScenarioEdits.Life(new LifeEvidence.Survived(km)))));
    }

    private static TomlValue.Table Uniform(double x) => TomlValue.TableOf(
        ("distribution", TomlValue.Of("uniform")), ("low", TomlValue.Of(x)), ("high", TomlValue.Of(1.1 * x)),
            ("knowledge", TomlValue.Of("unknown")));

    private static Property KeepsComments(string before, string after)
    {
        string[] lost = [.. before.Split('\n').Where(l => l.Contains('#')).Select(l => l[l.IndexOf('#')..])
            .Where(c => !after.Contains(c, StringComparison.Ordinal))];
        return (lost.Length == 0).Label("lost: " + string.Join(" | ", lost));
    }

    private static Scenario Read(string text) => ScenarioReader.ParseFor(text, Repository.PathTo("scenarios", "a.toml")).Scenario;

    private static Scenario? TryRead(string text)
    {
        try
        {
            return Read(text);
        }
        catch (ScenarioException)
        {
            return null;
        }
    }

    /// <summary>Where two texts differ, by lines.</summary>
    private sealed class Place
    {
        public Place(string old, string now)
        {
            string[] a = old.Split('\n');
            string[] b = now.Split('\n');
            int head = 0;
            while (head < Math.Min(a.Length, b.Length) && a[head] == b[head])
            {
                head++;
            }

            int tail = 0;
            while (tail < Math.Min(a.Length, b.Length) - head && a[^(tail + 1)] == b[^(tail + 1)])
            {
                tail++;
            }

            OldLines = a.Length - head - tail;
        }

        /// <summary>The lines of the old text that are not in the new one.</summary>
        public int OldLines { get; }
    }
}
