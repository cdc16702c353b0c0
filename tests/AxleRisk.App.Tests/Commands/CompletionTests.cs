using System.Diagnostics;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>What the program suggests while a line is typed, what it meant, and its pages for man.</summary>
public sealed class CompletionTests
{
    private static readonly string Van = Cli.Shipped("warranty-clinic-van");

    [Theory]
    [InlineData("risk rank remedies report", "", "r")]
    [InlineData("--method", "risk a.toml", "--m")]
    [InlineData("auto conditional crude importance", "risk a.toml --method", "")]
    [InlineData("conditional crude", "merge part --method", "c")]
    [InlineData("--method=importance", "risk", "--method=i")]
    [InlineData("importance", "risk --method =", "i")]
    [InlineData("sobol", "rank a.toml --seed 3 --sampling", "s")]
    [InlineData("--data-folder", "check", "--d")]
    [InlineData("bash", "completions", "b")]
    [InlineData("scenario", "schema", "sc")]
    [InlineData("slurm kubernetes part status merge", "cluster", "")]
    [InlineData("--parts", "cluster slurm", "--p")]
    public void Words_are_suggested_from_the_commands(string expected, string before, string word) => Assert.Equal(
        expected.Split(' '), Suggested([.. before.Split(' ', StringSplitOptions.RemoveEmptyEntries), "+" + word]));

    [Fact]
    public void Scenarios_folders_and_inputs_are_suggested()
    {
        string folder = Path.GetDirectoryName(Van)!;
        Assert.Equal([Van], Suggested("risk", $"+{folder}/warr"));
        Assert.Contains($"{folder}/", Suggested("risk", $"+{Path.GetDirectoryName(folder)}/scen"));
        Assert.Empty(Suggested("fit", $"+{folder}/warr"));
        Assert.Equal(["axle.wall_mm="], Suggested("sweep", Van, "--input", "+axle.wa"));
        Assert.Empty(Suggested("risk", "+/no/such/folder/"));
    }

    [Theory]
    [InlineData("axlerisk: there is no command rsk; did you mean risk?", "rsk", "a.toml")]
    [InlineData("axlerisk: there is no option --metod; did you mean --method?", "risk", "a.toml", "--metod", "crude")]
    public void A_mistyped_word_is_answered_by_what_was_meant(string expected, params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(args);
        Assert.Equal((2, "", expected), (exit, output, error.Split('\n')[0]));
    }

    [Fact]
    public void A_word_that_is_near_to_none_keeps_the_list() => Assert.Contains("a command is needed: check, base", Cli.Run("zzzzzz").Error);

    [Fact]
    public void Help_lists_the_choices()
    {
        string help = Cli.Run("risk", "--help").Out;
        Assert.Contains("--method <auto|", help);
        Assert.Contains("sobol", help);
    }

    [Fact]
    public void The_version_tells_the_width_of_the_vectors()
    {
        Assert.SkipUnless(TestedProgram.Given is null, "that of an archive is tried by .ci/check-package");
        int bits = Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256
            : Vector128.IsHardwareAccelerated ? 128 : 64;
        Assert.Equal($"axlerisk {Product.Version} (of a working copy)\ndamage model {LifeModel.Version}; vectors of {bits} bits; compiled as it runs\n",
            Cli.Run("--version").Out);
    }

    [Fact]
    public void Bash_completes_with_the_script()
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "no bash here");
        string program = Path.Combine(AppContext.BaseDirectory, "axlerisk");
        string script = Cli.Run("completions", "bash").Out
            + $"COMP_WORDS=({program} risk \"my file.toml\" --method con); COMP_CWORD=4; _axlerisk; echo \"${{COMPREPLY[*]}}\"";
        using Process bash = Process.Start(new ProcessStartInfo("/bin/bash", ["-c", script]) { RedirectStandardOutput = true })!;
        Assert.Equal("conditional\n", bash.StandardOutput.ReadToEnd());
    }

    [Fact]
    public void Every_command_has_a_page_for_man()
    {
        string folder = Path.Combine(TemporaryFolder.New(), "man");
        Assert.Equal(0, Cli.Run("manual", folder).Exit);
        string risk = File.ReadAllText(Path.Combine(folder, "axlerisk-risk.1"));
        Assert.StartsWith(".TH AXLERISK-RISK 1", risk);
        Assert.Contains(".B \\-\\-method auto|conditional|crude|importance\n", risk);
        string[] commands = [.. File.ReadAllLines(Path.Combine(folder, "axlerisk.1")).Where(l => l.StartsWith(".B ", StringComparison.Ordinal))
            .Select(l => l[3..]).Where(l => File.Exists(Path.Combine(folder, $"axlerisk-{l}.1")))];
        Assert.Contains(".B cluster slurm\n", File.ReadAllText(Path.Combine(folder, "axlerisk-cluster-slurm.1")));
        Assert.Contains(".B slurm\n", File.ReadAllText(Path.Combine(folder, "axlerisk-cluster.1")));
        Assert.Equal(Directory.GetFiles(folder).Count(f => !Path.GetFileName(f).StartsWith("axlerisk-cluster-", StringComparison.Ordinal)) - 1,
            commands.Length);
        Assert.DoesNotContain("suggest", commands);
    }

    private static string[] Suggested(params string[] words)
    {
        (int exit, string output, string error) = Cli.Run(["suggest", "--", .. words]);
        Assert.Equal((0, ""), (exit, error));
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
