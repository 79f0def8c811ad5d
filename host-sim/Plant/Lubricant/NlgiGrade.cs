using System.Collections.Generic;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// Consistency number of a grease by its worked penetration at 25 degC (ASTM D217, note to 1.1). The gaps of 1.5 mm between
/// the ranges belong to no number.
/// </summary>
/// <param name="Number">The number, <c>000</c> to <c>6</c>.</param>
/// <param name="LeastPenetration">Least worked penetration of the number, 0.1 mm; itself within it.</param>
/// <param name="MostPenetration">Most worked penetration of the number, 0.1 mm; itself within it.</param>
public sealed record NlgiGrade(string Number, double LeastPenetration, double MostPenetration)
{
    /// <summary>The numbers, softest first.</summary>
    public static IReadOnlyList<NlgiGrade> All { get; } =
    [
        new("000", 445, 475), new("00", 400, 430), new("0", 355, 385), new("1", 310, 340), new("2", 265, 295),
        new("3", 220, 250), new("4", 175, 205), new("5", 130, 160), new("6", 85, 115),
    ];

    /// <summary>The number of a worked penetration in 0.1 mm, or null in a gap or outside the numbers.</summary>
    public static NlgiGrade? OfPenetration(double penetration)
    {
        foreach (NlgiGrade grade in All)
        {
            if (penetration >= grade.LeastPenetration && penetration <= grade.MostPenetration)
                return grade;
        }

        return null;
    }

    /// <summary>The number written so, or null.</summary>
    public static NlgiGrade? Named(string number)
    {
        foreach (NlgiGrade grade in All)
        {
            if (grade.Number == number)
                return grade;
        }

        return null;
    }
}
