namespace LubeController.Analysis.Specification;

/// <summary>Supply voltage and lubricant temperature against their limits.</summary>
internal sealed class Analogs(SpecSettings settings, SpecState state, SpecScan scan, AlarmBook alarms)
{
    /// <summary>Compares both. While the supply is low nothing that a cycle switch says is believed.</summary>
    internal void Compare()
    {
        state.SupplyLow = IsLow(state.SupplyLow, scan.Inputs.SupplyMilliVolt, settings.SupplyLowMilliVolt, settings.SupplyHysteresisMilliVolt);
        state.Cold = IsLow(state.Cold, scan.Inputs.TemperatureMilliCelsius, settings.ColdMilliCelsius, settings.ColdHysteresisMilliKelvin);
        alarms.Update(AlarmId.SupplyLow);
        if (!state.Alarm(AlarmId.SupplyLow).Active)
            return;

        // Afterwards its first debounced level, after the ready delay, is a baseline.
        state.ReadyMs = settings.ReadyDelayMs;
        foreach (SwitchState one in state.Switches)
            one.ForgetLevel();
    }

    private static bool IsLow(bool was, int value, int? limit, int hysteresis) =>
        limit is int least && value < (was ? least + hysteresis : least);
}
