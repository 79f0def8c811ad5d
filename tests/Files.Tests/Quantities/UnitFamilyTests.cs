using System;
using System.Linq;
using CsCheck;
using LubeController.Files.Quantities;
using Xunit;

namespace LubeController.Files.Tests.Quantities;

public sealed class UnitFamilyTests
{
    // Definitions of the SI brochure and of NIST SP 811 appendix B (psi 6.894757e3 Pa), from memory.
    [Theory]
    [InlineData("40 bar", "Pa", 4e6)]
    [InlineData("1 kPa", "Pa", 1e3)]
    [InlineData("0.3 GPa", "Pa", 3e8)]
    [InlineData("2MPa", "Pa", 2e6)]
    [InlineData("15 Pa", "Pa", 15)]
    [InlineData("250 mbar", "Pa", 25_000)]
    [InlineData("1000 psi", "Pa", 6.894757e6)]
    [InlineData("2 cm3", "m3", 2e-6)]
    [InlineData("3 ml", "m3", 3e-6)]
    [InlineData("1.5 l", "m3", 1.5e-3)]
    [InlineData("20 mm3", "m3", 2e-8)]
    [InlineData("12 cm3/min", "m3/s", 2e-7)]
    [InlineData("6 l/min", "m3/s", 1e-4)]
    [InlineData("5 cm3/s", "m3/s", 5e-6)]
    [InlineData("36 l/h", "m3/s", 1e-5)]
    [InlineData("250 ms", "s", 0.25)]
    [InlineData("90 s", "s", 90)]
    [InlineData("20 min", "s", 1200)]
    [InlineData("1.5 h", "s", 5400)]
    [InlineData("2 d", "s", 172_800)]
    [InlineData("1500 rpm", "1/s", 25)]
    [InlineData("30 1/min", "1/s", 0.5)]
    [InlineData("2 1/s", "1/s", 2)]
    [InlineData("20 degC", "K", 293.15)]
    [InlineData("212 degF", "K", 373.15)]
    [InlineData("-40 degC", "K", 233.15)]
    [InlineData("6 mm", "m", 6e-3)]
    [InlineData("+1e1 mm", "m", 1e-2)]
    [InlineData("0.6 cm3/min/bar", "m3/s/Pa", 1e-13)]
    [InlineData("1 cm3/s/bar", "m3/s/Pa", 1e-11)]
    [InlineData("0.05 %/bar", "1/Pa", 5e-9)]
    [InlineData("2 1/bar", "1/Pa", 2e-5)]
    [InlineData("-100 ppm", "ppm", -100)]
    [InlineData("8.64 s/d", "ppm", 100)]
    public void A_quantity_is_kept_in_si(string text, string siUnit, double expected)
    {
        UnitFamily family = UnitFamily.OfSi(siUnit);
        Assert.True(QuantityReader.TryRead(text, family, out Quantity quantity, out string message, out _), message);
        Assert.Equal(expected, quantity.Si, Math.Abs(expected) * 1e-7);
    }

    [Theory]
    [InlineData("90 %", 0.9)]
    [InlineData("0.25", 0.25)]
    [InlineData("2 1", 2.0)]
    public void A_ratio_needs_no_unit(string text, double expected)
    {
        Assert.True(QuantityReader.TryRead(text, UnitFamily.Ratio, out Quantity quantity, out _, out _));
        Assert.Equal(expected, quantity.Si, 1e-15);
    }

    [Theory]
    [InlineData("40", "the unit is missing: a pressure is expected")]
    [InlineData("40 s", "'s' makes it a time, but a pressure is expected")]
    [InlineData("40 Bar", "the unit 'Bar' is unknown (did you mean 'bar'?)")]
    [InlineData("bar", "a pressure is expected, a number and its unit")]
    [InlineData("1,5 bar", "a pressure is expected, and no comma may stand in a number")]
    [InlineData("1e999 bar", "a pressure is expected, and this number is too large to keep")]
    [InlineData("NaN bar", "a pressure is expected, a number and its unit")]
    [InlineData("5 bar 3", "a pressure is expected, a number and its unit")]
    public void What_is_no_pressure_is_refused_with_a_reason(string text, string expected)
    {
        Assert.False(QuantityReader.TryRead(text, UnitFamily.Pressure, out _, out string message, out string remedy));
        Assert.Equal(expected, message);
        Assert.Contains("bar", remedy);
    }

    [Fact]
    public void Every_unit_leads_to_si_and_back()
    {
        (UnitFamily Family, string Unit)[] units = UnitFamily.All.SelectMany(family => family.Units.Select(unit => (family, unit))).ToArray();
        Gen.Select(Gen.Int[0, units.Length - 1].Select(index => units[index]), Gen.Double[-1e6, 1e6]).Sample((unit, value) =>
        {
            double back = unit.Family.FromSi(unit.Family.ToSi(value, unit.Unit), unit.Unit);
            Assert.Equal(value, back, 1e-9 * Math.Max(1000.0, Math.Abs(value)));
        });
    }

    [Fact]
    public void A_difference_of_temperatures_knows_no_zero_point()
    {
        Assert.Equal(9.0, UnitFamily.Temperature.DifferenceFromSi(5.0, "degF"), 1e-9);
        Assert.Equal(5.0, UnitFamily.Temperature.DifferenceFromSi(5.0, "degC"), 1e-9);
    }

    [Theory]
    [InlineData("0.1 bar", true)]
    [InlineData("1000 bar", true)]
    [InlineData("100 MPa", true)]
    [InlineData("0.0999 bar", false)]
    [InlineData("1000.001 bar", false)]
    public void A_range_holds_its_ends_in_every_unit(string text, bool inside)
    {
        var range = new QuantityRange(UnitFamily.Pressure, 0.1, 1000, "bar");
        Assert.True(QuantityReader.TryRead(text, UnitFamily.Pressure, out Quantity quantity, out _, out _));
        Assert.Equal(inside, range.Holds(quantity));
    }
}
