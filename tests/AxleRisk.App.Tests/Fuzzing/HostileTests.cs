using Xunit;

namespace AxleRisk.App.Tests.Fuzzing;

/// <summary>A short part of the benchmarks' command <c>hostile</c>, whose figures stand in docs/accuracy.md.</summary>
public sealed class HostileTests
{
    [Fact]
    public void Any_text_is_read_or_refused_with_a_place()
    {
        var reading = new HostileReading(new HostileTexts(seed: 1));
        for (int number = 0; number < 2_000; number++)
        {
            reading.Read(number);
        }

        Assert.Empty(reading.Tally.Faults);
        Assert.All(reading.Tally.Kinds, k => Assert.InRange(k.Refused, 1, k.All - 1)); // both happen
    }

    [Fact]
    public void Any_valid_scenario_is_answered_by_every_command()
    {
        var answers = new HostileAnswers(new HostileTexts(seed: 1));
        int valid = 0;
        for (int number = 0; valid < 3; number++)
        {
            valid += answers.Ask(number) ? 1 : 0;
        }

        Assert.Empty(answers.Tally.Faults);
    }
}
