using System.Diagnostics;
using System.Text;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Files;

namespace AxleRisk.App.Tests.Fuzzing;

/// <summary>
/// Whatever the text, a reader gives what it says or throws a <see cref="ScenarioException"/> with places inside the text, within
/// half a second.
/// </summary>
internal sealed class HostileReading(HostileTexts texts)
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(0.5);

    private static readonly string DataFile = "wall_mm,axle\n"
        + string.Concat(Enumerable.Range(0, 40).Select(i => $"{6 + 0.01 * (i % 7)},{i}\n"));

    private static readonly string Measured = File.ReadAllText(Cli.Shipped("benchmark-five-legs")).Replace(
        "[axle]\n", "[axle]\ncorrosion_loss_mm = { distribution = \"sample\", file = \"walls.csv\", column = \"wall_mm\" }\n",
            StringComparison.Ordinal);

    private readonly Lazy<string> part = new(() =>
    {
        string path = Path.Combine(TemporaryFolder.New(), "part.json");
        Cli.Run("risk", Cli.Shipped("quarry-shuttle"), "-n", "300", "--part", "1/2", "--out", path);
        return File.ReadAllText(path);
    });

    private readonly string partPath = Path.Combine(TemporaryFolder.New(), "part.json");

    /// <summary>How many texts of each kind were read, were refused, and what went wrong.</summary>
    public HostileTally Tally { get; } = new();

    /// <summary>Reads the text of a number: of ten, seven are scenarios, two a data file and one a part of a study.</summary>
    public void Read(long number)
    {
        switch (number % 10)
        {
            case 8 or 9:
                string data = texts.Near(DataFile, number);
                Try("data file", number, Measured + data, () => ScenarioReader.Parse(Measured, "a.toml", _ => data));
                break;
            case 7:
                File.WriteAllText(partPath, texts.Near(part.Value, number));
                Try("part of a study", number, part.Value, () => PartFile.Read(partPath));
                break;
            default:
                string text = texts.Scenario(number);
                Try("scenario", number, text, () => ScenarioReader.Parse(text, "a.toml", _ => DataFile));
                break;
        }
    }

    private void Try(string kind, long number, string text, Action read)
    {
        var watch = Stopwatch.StartNew();
        bool refused = false;
        try
        {
            read();
        }
        catch (ScenarioException e)
        {
            refused = true;
            int lines = 1 + text.Count(c => c == '\n');
            if (e.Errors.Count == 0)
            {
                Tally.Wrong(kind, number, "refused without an error");
            }

            foreach (ScenarioError error in e.Errors.Where(x => x.Line > lines || x.Line < 0 || x.Column < 0 || x.Message.Length == 0
                || x.Message.Any(char.IsControl)))
            {
                Tally.Wrong(kind, number, $"no good error: {error}");
            }
        }
        catch (Exception e)
        {
            Tally.Wrong(kind, number,
                $"{e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("AxleRisk", StringComparison.Ordinal))?.Trim()}");
        }

        // On a busy machine it may have been another program's time: the shortest of three tells.
        TimeSpan took = watch.Elapsed;
        for (int again = 0; took > Longest && again < 2; again++)
        {
            watch.Restart();
            try
            {
                read();
            }
            catch (ScenarioException)
            {
            }

            took = watch.Elapsed < took ? watch.Elapsed : took;
        }

        Tally.Count(kind, refused, took);
        if (took > Longest)
        {
            Tally.Wrong(kind, number, $"{took.TotalSeconds:0.0} s to read {Encoding.UTF8.GetByteCount(text)} bytes");
        }
    }
}
