using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Screens.Pages;

/// <summary>A report that was written.</summary>
/// <param name="Folder">The folder, as a whole path.</param>
/// <param name="Studies">The studies in it, by the names of their commands.</param>
/// <param name="Pictures">The number of pictures.</param>
/// <param name="Tables">The number of tables.</param>
/// <param name="Risk">The answer that it begins with.</param>
internal sealed record WrittenReport(string Folder, ImmutableArray<string> Studies, int Pictures, int Tables, RiskResult Risk);
