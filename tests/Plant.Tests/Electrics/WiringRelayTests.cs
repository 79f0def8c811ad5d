using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Wiring;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

/// <summary>A relay between an output and the contacts that it moves: delays and bounce reach the supervisory input.</summary>
public sealed class WiringRelayTests
{
    private const long Ms = 1000;

    [Fact]
    public void Contacts_move_after_their_delays()
    {
        LubricationSystem system = With(new OutputContactDescription { OperateUs = 8 * Ms, ReleaseUs = 3 * Ms });
        Assert.Equal([(108 * Ms, true), (203 * Ms, false)], Changes(system));
    }

    [Fact]
    public void Without_a_relay_of_its_own_an_output_moves_its_contacts_at_once() =>
        Assert.Equal([(100 * Ms, true), (200 * Ms, false)], Changes(With(null)));

    [Fact]
    public void A_contact_that_closes_bounces_within_its_worst_time_and_one_that_opens_does_not()
    {
        var bounce = new BounceDescription(1600, 6200);
        int bounced = 0;
        for (ulong seed = 1; seed <= 20; seed++)
        {
            List<(long Us, bool On)> changes = Changes(With(new OutputContactDescription { Bounce = bounce }, seed));
            Assert.Equal((200 * Ms, false), changes[^1]);
            Assert.True(changes[^2].On);
            Assert.InRange(changes[^2].Us, 100 * Ms, (100 * Ms) + bounce.WorstUs);
            bounced += changes.Count > 2 ? 1 : 0;
        }

        Assert.InRange(bounced, 18, 20);
    }

    [Fact]
    public void A_relay_let_go_before_it_has_moved_does_not_move()
    {
        LubricationSystem system = With(new OutputContactDescription { OperateUs = 8 * Ms });
        system.SetWiringOutput(0, true);
        system.AdvanceTo(5 * Ms);
        system.SetWiringOutput(0, false);
        system.AdvanceTo(100 * Ms);
        Assert.False(On(system));
    }

    [Fact]
    public void A_welded_contact_holds_the_armature_of_a_relay_too()
    {
        LubricationSystem system = With(new OutputContactDescription { OperateUs = 8 * Ms, ReleaseUs = 3 * Ms });
        system.SetWiringOutput(0, true);
        system.AdvanceTo(20 * Ms);
        system.ApplyFault(WiringFaults.ContactWelded, "K1");
        system.SetWiringOutput(0, false);
        system.AdvanceTo(100 * Ms);
        Assert.True(On(system));
        Assert.True(system.TookEffect(WiringFaults.ContactWelded, "K1"));
    }

    [Fact]
    public void A_relay_of_an_output_that_no_contact_names_is_refused() =>
        Assert.Contains(
            PlantCheck.Refusals(Plants.Twin(3) with { Wiring = Wiring(null) with { Relays = [new WiringRelay("lamp", new OutputContactDescription())] } }),
            refusal => refusal.Path == "wiring.relays[0].output");

    private static LubricationSystem With(OutputContactDescription? contact, ulong seed = 1) => new(Plants.Twin(3) with { Wiring = Wiring(contact) }, seed);

    private static SupervisoryWiringDescription Wiring(OutputContactDescription? contact) => new()
    {
        Supplies = [new WiringSupply("G1", "24V", "0V", 24)],
        Contacts = [new WiringContact("K1", "warning", ContactSide.NormallyOpen, "24V", "A1")],
        Relays = contact is null ? [] : [new WiringRelay("warning", contact)],
        Inputs = [new SupervisoryInputDescription { Name = "warning", From = "A1", To = "0V" }],
    };

    private static List<(long Us, bool On)> Changes(LubricationSystem system)
    {
        var changes = new List<(long Us, bool On)>();
        bool on = On(system);
        Note();
        system.AdvanceTo(100 * Ms);
        system.SetWiringOutput(0, true);
        Run(200 * Ms);
        system.SetWiringOutput(0, false);
        Run(300 * Ms);
        return changes;

        void Run(long untilUs)
        {
            Note();
            while (system.NextEventUs < untilUs)
            {
                system.AdvanceTo(system.NextEventUs);
                Note();
            }

            system.AdvanceTo(untilUs);
        }

        void Note()
        {
            if (On(system) == on)
                return;
            on = On(system);
            changes.Add((system.NowUs, on));
        }
    }

    private static bool On(LubricationSystem system)
    {
        system.Wiring!.Read();
        return system.Wiring.StateOf(0) == 1;
    }
}
