using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>What would tell the two leading explanations of a failure apart, as text.</summary>
internal static class ApartText
{
    public const string Heading = "On the vehicle of the evidence: telling the two leading explanations apart";

    /// <summary>What to look at, with what it is expected to tell.</summary>
    public static string Sentence(Apart apart) => Best(apart) is var (what, bits) && bits.Low > 0
        ? $"On the vehicle of the evidence, {what} is expected to tell {Number(bits.Estimate)} of the {Number(apart.Open)} bits that are open between {Pair(apart)}"
        : $"Of what was asked about this run finds nothing that would tell {Pair(apart)} apart on the vehicle of the evidence";

    public static TextTable Table(Apart apart)
    {
        var table = new TextTable("measured on that vehicle", "bits", "95 % interval", "of what is open");
        foreach ((string what, string? note, Interval bits) in Rows(apart))
        {
            string[] cells = [what, Number(bits.Estimate), $"{Number(bits.Low)} to {Number(bits.High)}", Figures.Share(apart.ShareOf(bits))];
            if (note is null)
            {
                table.Add(cells);
            }
            else
            {
                table.AddNoted(note, cells);
            }
        }

        return table;
    }

    /// <summary>How to read it.</summary>
    public static string Reading(Apart apart) =>
        $"bits: the expected information of the reading on which of {Pair(apart)} holds, where one of them holds without the other, as it does with a probability of {Figures.Probability(apart.OneOfThem)} given the evidence; {Number(apart.Open)} bits are open. A reading may also speak for neither.";

    private static (string What, Interval Bits) Best(Apart apart) => Rows(apart).First() is var (what, note, bits) && note is not null
        ? ($"knowing {what.Replace(", exactly", " exactly")}", bits) : (what, bits);

    private static IEnumerable<(string What, string? Note, Interval Bits)> Rows(Apart apart) => apart.Measurements
        .Select(m => ($"\"{Printable.Line(m.Measurement.Name)}\"", (string?)null, m.Bits))
        .Concat(apart.Factors.Select(f => ($"{f.Factor.LabelOf(f.Name)}, exactly", (string?)f.Name, f.Bits)))
        .OrderByDescending(r => r.Bits.Estimate);

    private static string Pair(Apart apart) => $"\"{Printable.Line(apart.First)}\" and \"{Printable.Line(apart.Second)}\"";

    private static string Number(double bits) => bits.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture);
}
