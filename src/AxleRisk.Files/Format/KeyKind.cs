using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>What may stand behind a key of the scenario file.</summary>
public abstract record KeyKind
{
    private KeyKind()
    {
    }

    /// <summary>What would be right, in words: <c>a number above 0</c>.</summary>
    public abstract string MustBe { get; }

    /// <summary>A number.</summary>
    /// <param name="Domain">Its range.</param>
    public sealed record Number(Domain Domain) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => Domain.Describe();
    }

    /// <summary>A whole number.</summary>
    /// <param name="Least">The least.</param>
    /// <param name="Most">The greatest.</param>
    public sealed record Whole(long Least, long Most) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"a whole number from {Least} to {Most}";
    }

    /// <summary>A number or a distribution, whose keys are in <see cref="DistributionFormat"/>.</summary>
    /// <param name="Domain">Its range.</param>
    /// <param name="OnlyVaries">Whether it can only vary, not be one value for all that is not known.</param>
    public sealed record Uncertain(Domain Domain, bool OnlyVaries = false) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => Domain.Describe() + (OnlyVaries ? ", or a distribution that varies" : "");
    }

    /// <summary>Numbers in brackets.</summary>
    /// <param name="Domain">The range of each.</param>
    /// <param name="Least">The fewest.</param>
    /// <param name="Most">The most.</param>
    /// <param name="Words">What would be right, in words.</param>
    public sealed record Numbers(Domain Domain, int Least, int Most, string Words) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => Words;
    }

    /// <summary>One of a few words.</summary>
    /// <param name="Words">The words.</param>
    public sealed record Word(ImmutableArray<string> Words) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => OneOf(Words);
    }

    /// <summary>One of a few words, or a choice of several, whose keys are in <see cref="DetailFormat.WordChoice"/>.</summary>
    /// <param name="Words">The words.</param>
    public sealed record WordOrChoice(ImmutableArray<string> Words) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"{OneOf(Words)}, or a choice of several";
    }

    /// <summary>One or more of a few words in brackets; one may stand without.</summary>
    /// <param name="Words">The words.</param>
    public sealed record SomeWords(ImmutableArray<string> Words) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"a list of {OneOf(Words)}";
    }

    /// <summary>Texts in brackets.</summary>
    /// <param name="Most">The most.</param>
    public sealed record Texts(int Most) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"up to {Most} texts";
    }

    /// <summary>Any text.</summary>
    /// <param name="Words">What would be right, in words.</param>
    /// <param name="IsUsualLeg">Whether it is the name of a leg of the usual use.</param>
    public sealed record Text(string Words = "a text", bool IsUsualLeg = false) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => Words;
    }

    /// <summary>A text of one line that is not empty.</summary>
    /// <param name="Longest">The most characters.</param>
    /// <param name="Example">An example; empty for none.</param>
    public sealed record Line(int Longest, string Example = "") : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe =>
            $"one line of up to {Longest} characters{(Example.Length > 0 ? $", such as {Example}" : "")}";
    }

    /// <summary>A name that is part of the names of inputs.</summary>
    public sealed record PlainName : KeyKind
    {
        /// <summary>Its form, as a regular expression of the whole.</summary>
        public const string Form = "[A-Za-z0-9_-]{1,40}";

        /// <inheritdoc/>
        public override string MustBe => "up to 40 letters, digits, `-` and `_`";
    }

    /// <summary>The name of an input.</summary>
    public sealed record InputName : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "the name of an uncertain input";
    }

    /// <summary>The names of two inputs in brackets.</summary>
    public sealed record InputPair : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "the names of two uncertain, continuous inputs";
    }

    /// <summary>
    /// A category of the weld catalogue that the key <c>catalogue</c> names, or a choice of several, whose keys are in
    /// <see cref="DetailFormat.WordChoice"/>.
    /// </summary>
    public sealed record Category : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "a category of the catalogue (below), or a choice of several";
    }

    /// <summary>A state of a choice: one of its numbers or categories.</summary>
    public sealed record State : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "a number or a category of the choice";
    }

    /// <summary>
    /// A table with names of inputs as keys: behind each a range, whose keys are in <see cref="EvidenceFormat.Range"/>, a state or several
    /// in brackets.
    /// </summary>
    public sealed record Conditions : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "a table of conditions";
    }

    /// <summary>
    /// A table with names of inputs as keys: behind each its new value, a factor on it, whose key is in <see cref="RemedyFormat.Times"/>,
    /// or a category.
    /// </summary>
    public sealed record Changes : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "a table of at least one change";
    }

    /// <summary>Two pairs of a probability and a value.</summary>
    public sealed record QuantilePairs : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => "two pairs of probability and value";
    }

    /// <summary>The values of a choice in brackets.</summary>
    /// <param name="OfWords">Whether they are words, such as weld categories, and not numbers.</param>
    public sealed record Values(bool OfWords) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => OfWords ? "categories or environments of the catalogue" : "numbers in the range of the quantity";
    }

    /// <summary>A table of its own.</summary>
    /// <param name="Of">The table.</param>
    public sealed record Table(TableFormat Of) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"one table under [{Of.Path}]";
    }

    /// <summary>Tables of one form.</summary>
    /// <param name="Of">Their form.</param>
    /// <param name="Least">The fewest, where they are stated.</param>
    /// <param name="Most">The most.</param>
    /// <param name="Called">What they are called: <c>legs of use</c>.</param>
    public sealed record Tables(TableFormat Of, int Least, int Most, string Called) : KeyKind
    {
        /// <inheritdoc/>
        public override string MustBe => $"tables, each under [[{Of.Path}]]";
    }

    private static string OneOf(ImmutableArray<string> words) =>
        string.Join(", ", words[..^1].Select(w => $"`\"{w}\"`")) + (words.Length > 1 ? " or " : "") + $"`\"{words[^1]}\"`";
}
