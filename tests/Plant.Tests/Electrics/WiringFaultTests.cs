using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Wiring;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

/// <summary>Faults of the wiring as every fault is set: on the plant, by kind and part.</summary>
public sealed class WiringFaultTests
{
    private static readonly PlantDescription Wired = Plants.Twin(3) with { Wiring = WiringSamples.Plain };

    [Fact]
    public void Every_kind_of_the_wiring_is_in_the_registry_with_parts_only_where_there_is_wiring()
    {
        Assert.Equal(WiringFaults.All, FaultCatalogue.All.OfType<WiringFault>());
        Assert.All(WiringFaults.All, kind => Assert.NotEmpty(FaultCatalogue.PartNames(kind, Wired)));
        Assert.All(WiringFaults.All, kind => Assert.Empty(FaultCatalogue.PartNames(kind, Plants.Twin(3))));
        Assert.Equal(15, FaultCatalogue.PartNames(WiringFaults.WireBridged, Wired).Count);
    }

    [Fact]
    public void A_broken_wire_takes_effect_when_its_contact_closes_and_not_before()
    {
        var system = new LubricationSystem(Wired, 1);
        system.SetWiringOutput(0, true);
        system.ApplyFault(WiringFaults.WireOpen, "W-warning");
        system.NoteFaultEffects();
        Assert.False(system.TookEffect(WiringFaults.WireOpen, "W-warning"));
        system.SetWiringOutput(1, true);
        Assert.True(system.TookEffect(WiringFaults.WireOpen, "W-warning"));
        Assert.Equal(0, system.Wiring!.StateOf(1));

        system.HealFault(WiringFaults.WireOpen, "W-warning");
        Assert.Equal(1, system.Wiring.StateOf(1));
    }

    [Fact]
    public void Of_two_faults_each_takes_effect_by_its_own_difference()
    {
        var system = new LubricationSystem(Wired, 1);
        system.ApplyFault(WiringFaults.WireOpen, "W-good");
        system.ApplyFault(WiringFaults.ContactWelded, "K1-good");
        system.NoteFaultEffects();
        // Behind the broken wire the welded contact moves nothing but its own terminal; the wire hangs on a contact that is closed.
        Assert.True(system.TookEffect(WiringFaults.ContactWelded, "K1-good"));
        Assert.True(system.TookEffect(WiringFaults.WireOpen, "W-good"));
    }

    [Fact]
    public void A_welded_contact_that_is_closed_anyway_has_no_effect()
    {
        var system = new LubricationSystem(Wired, 1);
        system.SetWiringOutput(0, true);
        int entry = system.ApplyFault(WiringFaults.ContactWelded, "K1-good");
        system.NoteFaultEffects();
        Assert.False(system.FaultLog.Entries[entry].TookEffect);
        system.HealFault(WiringFaults.ContactWelded, "K1-good");
        system.SetWiringOutput(0, false);
        Assert.False(system.FaultLog.Entries[entry].TookEffect);
        Assert.Equal(0, system.Wiring!.StateOf(0));
    }

    [Fact]
    public void A_resistance_that_grows_crosses_the_inputs_thresholds()
    {
        var system = new LubricationSystem(Wired, 1);
        system.SetWiringOutput(0, true);
        system.ApplyFault(WiringFaults.WireResistive, "W-good", 0);
        Assert.Equal(1, system.Wiring!.StateOf(0));
        Assert.False(system.Wiring.IsUndefined(0));
        system.AdjustFault(WiringFaults.WireResistive, "W-good", 6000);
        Assert.True(system.Wiring.IsUndefined(0));
        system.AdjustFault(WiringFaults.WireResistive, "W-good", 100_000);
        Assert.Equal(0, system.Wiring.StateOf(0));
        Assert.False(system.Wiring.IsUndefined(0));
    }

    [Fact]
    public void A_relay_that_has_pulled_in_holds_through_a_fault_at_which_it_would_not_pull_in()
    {
        // The return of the coils touches the supply: some 4 V are left across a coil that drops out at 2.4 V.
        PlantDescription plant = Plants.Twin(3) with { Wiring = WiringSamples.Interposed };
        var before = new LubricationSystem(plant, 1);
        before.SetWiringOutput(0, true);
        Assert.True(before.Wiring!.IsEnergised(0));
        before.ApplyFault(WiringFaults.WireShortedToSupply, "W-coil-return");
        Assert.True(before.Wiring.IsEnergised(0));

        var after = new LubricationSystem(plant, 1);
        after.ApplyFault(WiringFaults.WireShortedToSupply, "W-coil-return");
        after.SetWiringOutput(0, true);
        Assert.False(after.Wiring!.IsEnergised(0));
    }
}
