using System.Globalization;
using AxleRisk.Files.Writing;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public class ShareTests
{
    [Theory]
    [InlineData(new[] { 1.0, 1, 1 }, "0.3334 0.3333 0.3333")]
    [InlineData(new[] { 0.35, 0.4, 0.2, 0.05 }, "0.35 0.4 0.2 0.05")]
    [InlineData(new[] { 1.0, 1e-7 }, "0.9999999 0.0000001")]
    public void They_are_rounded_by_the_largest_remainder(double[] shares, string expected) =>
        Assert.Equal(expected,
            string.Join(' ', Shares.Exactly(shares).Select(s => s.ToString("0.#########", CultureInfo.InvariantCulture))));

    [Property]
    public Property They_add_up_to_one_as_written() => Prop.ForAll(
        Gen.Choose(1, 1_000_000).NonEmptyListOf().ToArbitrary(),
        parts =>
        {
            decimal[] written = [.. Shares.Exactly([.. parts.Select(p => (double)p)])
                .Select(s => decimal.Parse(Shares.ToValue(s).Write(), CultureInfo.InvariantCulture))];
            double sum = parts.Sum(p => (double)p);
            return written.Sum() == 1m && written.Zip(parts).All(p => p.First > 0 && Math.Abs((double)p.First - (p.Second / sum)) < 1.1e-4);
        });
}
