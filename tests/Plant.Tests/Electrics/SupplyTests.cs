using System;
using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Supplies;
using LubeController.Plant.Tests.Electrics.Spice;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class SupplyTests
{
    private readonly Supply _supply = new(new SupplyDescription());

    [Fact]
    public void A_ramp_down_stops_the_logic_at_one_voltage_and_a_ramp_up_starts_it_at_another()
    {
        _supply.AdvanceTo(1_000_000);
        _supply.RampTo(0, 24_000_000);
        Assert.Equal(12, _supply.VoltageAt(13_000_000), 9);
        // 24 V to under 15 V at 1 V a second.
        Assert.Equal(10_000_001, _supply.NextEventUs);
        _supply.AdvanceTo(10_000_000);
        Assert.True(_supply.Powered);
        _supply.AdvanceTo(10_000_001);
        Assert.False(_supply.Powered);

        _supply.AdvanceTo(25_000_000);
        _supply.RampTo(24, 24_000_000);
        Assert.Equal(43_000_000, _supply.NextEventUs);
        _supply.AdvanceTo(43_000_000);
        Assert.True(_supply.Powered);
        Assert.Equal(long.MaxValue, _supply.NextEventUs);
    }

    [Theory]
    [InlineData(16, 20_000, 0, false)]
    [InlineData(14.9, 20_000, 0, true)]
    [InlineData(0, 1, 0, true)]
    [InlineData(0, 20_000, 100_000, true)]
    public void A_dip_of_any_length_stops_the_logic_if_it_is_deep_enough(double volts, long durationUs, long recoveryUs, bool stops)
    {
        _supply.AdvanceTo(500);
        _supply.Dip(volts, durationUs, recoveryUs);
        Assert.Equal(!stops, _supply.Powered);
        Assert.Equal(volts, _supply.NowV, 9);
        long back = stops ? _supply.NextEventUs : 500 + durationUs + recoveryUs;
        Assert.InRange(back, 500 + durationUs, 500 + durationUs + recoveryUs);
        _supply.AdvanceTo(back);
        Assert.True(_supply.Powered);
        _supply.AdvanceTo(1_000_000);
        Assert.Equal(24, _supply.NowV, 9);
    }

    [Fact]
    public void Ripple_alone_stops_and_starts_the_logic_where_it_crosses_both_thresholds()
    {
        _supply.RampTo(17, 0);
        _supply.SetRipple(6, 10_000);
        Assert.True(_supply.Powered);
        var changes = new List<long>();
        while (changes.Count < 6)
        {
            _supply.AdvanceTo(_supply.NextEventUs);
            changes.Add(_supply.NowUs);
        }

        // 14 to 20 V: down through 15 V beyond two thirds of the falling half, up through 18 V beyond two thirds of the rising one.
        Assert.Equal([6_667, 10_834, 16_667, 20_834, 26_667, 30_834], changes);
    }

    [Fact]
    public void What_it_foretells_is_what_stepping_each_microsecond_finds()
    {
        for (ulong seed = 1; seed <= 60; seed++)
        {
            var numbers = new TestNumbers(seed);
            var supply = new Supply(new SupplyDescription());
            supply.AdvanceTo(numbers.Below(500));
            supply.SetRipple(numbers.Between(0, 8), 4 * (1 + numbers.Below(200)));
            if (numbers.Below(2) == 0)
                supply.RampTo(numbers.Between(0, 30), numbers.Below(3000));
            else
                supply.Dip(numbers.Between(0, 20), 1 + numbers.Below(2000), numbers.Below(1000));
            bool powered = supply.Powered;
            for (long at = supply.NowUs + 1; at < 5_000; at++)
            {
                double volts = supply.VoltageAt(at);
                bool expected = powered ? volts >= 15 : volts >= 18;
                supply.AdvanceTo(at);
                Assert.True(expected == supply.Powered, $"seed {seed} at {at} us: {volts} V");
                powered = expected;
            }
        }
    }

    [Fact]
    public void Voltages_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => _supply.RampTo(61, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _supply.Dip(0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _supply.SetRipple(1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Supply(new SupplyDescription { LogicOffV = 19 }));
    }

    [Fact]
    public void A_changeover_contact_leaves_one_side_at_once_and_bounces_on_the_other()
    {
        var contact = new OutputContact(new OutputContactDescription { OperateUs = 8_000, ReleaseUs = 4_000, Bounce = BounceDescription.Usual }, 3);
        Assert.True(contact.IsClosed(ContactSide.NormallyClosed));
        int changes = 0;
        for (int move = 1; move <= 100; move++)
        {
            contact.AdvanceTo(move * 50_000);
            bool energised = move % 2 == 1;
            ContactSide reached = energised ? ContactSide.NormallyOpen : ContactSide.NormallyClosed;
            ContactSide left = energised ? ContactSide.NormallyClosed : ContactSide.NormallyOpen;
            contact.Command(energised);
            Assert.True(contact.IsClosed(left));
            contact.AdvanceTo(contact.NextEventUs);
            Assert.Equal((move * 50_000) + (energised ? 8_000 : 4_000), contact.NowUs);
            while (contact.NextEventUs != long.MaxValue)
            {
                Assert.False(contact.IsClosed(left));
                contact.AdvanceTo(contact.NextEventUs);
                changes++;
            }

            Assert.True(contact.IsClosed(reached));
        }

        Assert.True(changes > 200);
    }

    [Fact]
    public void A_welded_side_stays_closed_and_holds_the_other_open()
    {
        var contact = new OutputContact(new OutputContactDescription(), 1);
        contact.Command(true);
        Assert.True(contact.IsClosed(ContactSide.NormallyOpen));
        contact.SetWelded(ContactSide.NormallyOpen);
        contact.Command(false);
        Assert.True(contact.IsClosed(ContactSide.NormallyOpen));
        Assert.False(contact.IsClosed(ContactSide.NormallyClosed));
        contact.SetWelded(null);
        Assert.True(contact.IsClosed(ContactSide.NormallyClosed));
    }

    [Fact]
    public void A_broken_coil_lets_the_contact_go()
    {
        var contact = new OutputContact(new OutputContactDescription(), 1);
        contact.Command(true);
        contact.SetCoilBroken(true);
        Assert.True(contact.IsClosed(ContactSide.NormallyClosed));
        contact.SetCoilBroken(false);
        Assert.True(contact.IsClosed(ContactSide.NormallyOpen));
    }
}
