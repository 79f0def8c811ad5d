using Stateless;
using static LubeController.Analysis.Specification.Lifecycle;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The lifecycle of an alarm per ISA-18.2 and IEC 62682, as one Stateless machine. The last three states change annunciation
/// only: whether the alarm is active or latched goes on beside them.
/// </summary>
internal static class LifecycleMachine
{
    /// <summary>Builds the machine of one alarm.</summary>
    /// <param name="alarm">The alarm, which holds the machine's state.</param>
    internal static StateMachine<Lifecycle, LifecycleEvent> Build(AlarmState alarm)
    {
        var machine = new StateMachine<Lifecycle, LifecycleEvent>(() => alarm.Lifecycle, state => alarm.Lifecycle = state, FiringMode.Immediate);

        // What no state answers to changes nothing.
        machine.OnUnhandledTrigger((_, _) => { });
        ConfigureShown(machine, alarm);
        ConfigureHidden(machine, alarm);
        return machine;
    }

    private static void ConfigureShown(StateMachine<Lifecycle, LifecycleEvent> machine, AlarmState alarm)
    {
        machine.Configure(Normal)
            .Permit(LifecycleEvent.ConditionBegins, Unacknowledged);
        machine.Configure(Unacknowledged)
            .Permit(LifecycleEvent.ConditionEnds, ReturnedUnacknowledged)
            .PermitIf(LifecycleEvent.Acknowledge, Acknowledged, () => alarm.Active, "condition present")
            .PermitIf(LifecycleEvent.Acknowledge, Latched, () => !alarm.Active, "latch only")
            .Permit(LifecycleEvent.Reset, ReturnedUnacknowledged);
        machine.Configure(Acknowledged)
            .PermitIf(LifecycleEvent.ConditionEnds, Latched, () => alarm.Latched, "latched")
            .PermitIf(LifecycleEvent.ConditionEnds, Normal, () => !alarm.Latched, "not latched");
        machine.Configure(ReturnedUnacknowledged)
            .Permit(LifecycleEvent.ConditionBegins, Unacknowledged)
            .PermitIf(LifecycleEvent.Acknowledge, Latched, () => alarm.Latched, "latched")
            .PermitIf(LifecycleEvent.Acknowledge, Normal, () => !alarm.Latched, "not latched");
        machine.Configure(Latched)
            .Permit(LifecycleEvent.ConditionBegins, Unacknowledged)
            .Permit(LifecycleEvent.Reset, Normal);
        foreach (Lifecycle shown in new[] { Normal, Unacknowledged, Acknowledged, ReturnedUnacknowledged, Latched })
        {
            machine.Configure(shown)
                .Permit(LifecycleEvent.Shelve, Shelved)
                .Permit(LifecycleEvent.CauseStands, SuppressedByDesign)
                .Permit(LifecycleEvent.TakeOutOfService, OutOfService);
        }
    }

    /// <summary>On leaving, an alarm is unacknowledged or normal by its present condition, a latch being one.</summary>
    private static void ConfigureHidden(StateMachine<Lifecycle, LifecycleEvent> machine, AlarmState alarm)
    {
        machine.Configure(Shelved)
            .Permit(LifecycleEvent.TakeOutOfService, OutOfService);
        machine.Configure(SuppressedByDesign)
            .Permit(LifecycleEvent.Shelve, Shelved)
            .Permit(LifecycleEvent.TakeOutOfService, OutOfService);
        Leaves(Shelved, LifecycleEvent.ShelvingOver);
        Leaves(SuppressedByDesign, LifecycleEvent.CauseGone);
        Leaves(OutOfService, LifecycleEvent.ReturnToService);

        void Leaves(Lifecycle hidden, LifecycleEvent happening) => machine.Configure(hidden)
            .PermitIf(happening, Unacknowledged, () => alarm.Stands, "condition or latch present")
            .PermitIf(happening, Normal, () => !alarm.Stands, "neither present");
    }
}
