using System.CommandLine;
using System.CommandLine.Invocation;
using System.Runtime.CompilerServices;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk --version</c>: the version with its commit, and what decides the speed of this build on this machine.</summary>
internal sealed class VersionAction(Terminal terminal) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        string made = RuntimeFeature.IsDynamicCodeCompiled ? "compiled as it runs" : "native program";
        terminal.Out.WriteLine($"{Product.Name} {Product.Version}{(Product.Commit is null ? " (of a working copy)" : "")}");
        terminal.Out.WriteLine($"damage model {LifeModel.Version}; vectors of {LifeModel.VectorBits} bits; {made}");
        return ExitCode.Done;
    }
}
