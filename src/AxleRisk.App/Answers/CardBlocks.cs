using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The crew's card.</summary>
internal static class CardBlocks
{
    /// <summary>The card among the answers of a trip; nothing without one.</summary>
    public static IEnumerable<Block> Of(TripResult result) => result.Card is not { } card ? [] :
    [
        new Subheading(CardText.Heading),
        .. Card(result),
        .. card.Prices.IsEmpty ? [] : new Block[] { new Subheading(CardText.PricesHeading), new ItemList([.. CardText.Prices(card)]) },
        new Paragraph(CardText.Reading(card)),
    ];

    /// <summary>What stands on the dashboard.</summary>
    public static IEnumerable<Block> Card(TripResult result) => result.Card is not { } card ? [] :
    [
        .. card.KeepsTarget ? [] : new Block[] { new Warning(CardText.Lines(card).First()) },
        CardText.Legs(card).Captioned(CardText.LegsHeading),
        new ItemList(
        [
            .. CardText.Lines(card).Skip(card.KeepsTarget ? 0 : 1),
            .. TripLookText.OfCard(result),
        ]),
    ];
}
