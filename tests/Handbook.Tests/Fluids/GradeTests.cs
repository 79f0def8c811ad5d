using System.Linq;
using LubeController.Plant.Lubricant;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>The grades of greases and oils. The source stands beside each check.</summary>
public sealed class GradeTests
{
    /// <summary>Source: ASTM D217-21a, note to 1.1: NLGI number by worked penetration at 25 degC, 0.1 mm.</summary>
    [Theory]
    [InlineData("000", 445, 475)]
    [InlineData("00", 400, 430)]
    [InlineData("0", 355, 385)]
    [InlineData("1", 310, 340)]
    [InlineData("2", 265, 295)]
    [InlineData("3", 220, 250)]
    [InlineData("4", 175, 205)]
    [InlineData("5", 130, 160)]
    [InlineData("6", 85, 115)]
    public void A_penetration_has_the_NLGI_number_of_ASTM_D217(string number, int least, int most)
    {
        Assert.Equal(number, NlgiGrade.OfPenetration(least)?.Number);
        Assert.Equal(number, NlgiGrade.OfPenetration(most)?.Number);
        Assert.Equal((least, most), (NlgiGrade.Named(number)!.LeastPenetration, NlgiGrade.Named(number)!.MostPenetration));
        Assert.NotEqual(number, NlgiGrade.OfPenetration(least - 0.1)?.Number);
        Assert.NotEqual(number, NlgiGrade.OfPenetration(most + 0.1)?.Number);
    }

    /// <summary>Source: the same: nine numbers, and the gaps of 15 between them belong to none.</summary>
    [Fact]
    public void The_gaps_between_NLGI_numbers_belong_to_none()
    {
        Assert.Equal(9, NlgiGrade.All.Count);
        foreach ((NlgiGrade softer, NlgiGrade harder) in NlgiGrade.All.Zip(NlgiGrade.All.Skip(1)))
        {
            Assert.Equal(15, softer.LeastPenetration - harder.MostPenetration);
            Assert.Null(NlgiGrade.OfPenetration(harder.MostPenetration + 7.5));
        }

        Assert.Null(NlgiGrade.OfPenetration(476));
        Assert.Null(NlgiGrade.OfPenetration(84));
        Assert.Null(NlgiGrade.Named("7"));
    }

    /// <summary>Source: ISO 3448: the grades in mm²/s at 40 degC, each ±10 %.</summary>
    [Fact]
    public void The_viscosity_grades_are_those_of_ISO_3448_and_hold_ten_per_cent_either_way()
    {
        double[] printed = [2.2, 3.2, 4.6, 6.8, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500];
        Assert.Equal(printed, IsoViscosityGrade.All);
        Assert.All(printed, grade =>
        {
            Assert.Equal(grade, IsoViscosityGrade.Of(grade * 1e-6));
            Assert.Equal(grade, IsoViscosityGrade.Of(grade * 0.9e-6));
            Assert.Equal(grade, IsoViscosityGrade.Of(grade * 1.1e-6));
            Assert.Null(IsoViscosityGrade.Of(grade * 0.89e-6));
            Assert.Null(IsoViscosityGrade.Of(grade * 1.11e-6));
        });
    }
}
