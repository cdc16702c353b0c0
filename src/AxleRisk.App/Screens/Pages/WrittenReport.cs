using System.Collections.Immutable;
using AxleRisk.App.Sections;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Screens.Pages;

/// <summary>A report that was written.</summary>
/// <param name="Folder">The folder, as a whole path.</param>
/// <param name="Studies">The studies in it, by the names of their commands.</param>
/// <param name="LeftOut">The studies that are not in it, for they have no answer to the scenario.</param>
/// <param name="Pictures">The number of pictures.</param>
/// <param name="Tables">The number of tables.</param>
/// <param name="Risk">The answer that it begins with.</param>
internal sealed record WrittenReport(string Folder, ImmutableArray<string> Studies, ImmutableArray<LeftOutStudy> LeftOut, int Pictures,
    int Tables, RiskResult Risk);
