using AxleRisk.App.Tests.Fuzzing;

namespace AxleRisk.Benchmarks;

/// <summary>Hostile texts in numbers: read, and the valid ones taken through every command; two Markdown tables and every fault.</summary>
internal static class HostileStudy
{
    /// <summary>Runs the study and prints it.</summary>
    /// <param name="texts">How many texts to read.</param>
    /// <param name="valid">How many valid scenarios to take through every command.</param>
    /// <param name="seed">The seed.</param>
    public static void Print(int texts, int valid, ulong seed)
    {
        var hostile = new HostileTexts(seed);
        var reading = new HostileReading(hostile);
        for (int number = 0; number < texts; number++)
        {
            reading.Read(number);
        }

        Print("text", reading.Tally);
        var answers = new HostileAnswers(hostile);
        int asked = 0;
        for (int left = valid; left > 0; asked++)
        {
            left -= answers.Ask(asked) ? 1 : 0;
        }

        Console.WriteLine($"\n{valid} valid scenarios of {asked}\n");
        Print("command", answers.Tally);
    }

    private static void Print(string what, HostileTally tally)
    {
        Console.WriteLine($"| {what} | tried | refused | longest, s |\n| --- | --- | --- | --- |");
        foreach ((string kind, long all, long refused, TimeSpan longest) in tally.Kinds)
        {
            Console.WriteLine($"| {kind} | {all:#,0} | {refused:#,0} | {longest.TotalSeconds:0.00} |");
        }

        Console.WriteLine($"\n{tally.Faults.Count} faults");
        foreach (string fault in tally.Faults)
        {
            Console.WriteLine(fault);
        }
    }
}
