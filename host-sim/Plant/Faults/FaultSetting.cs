namespace LubeController.Plant.Faults;

/// <summary>What a fault is set to.</summary>
/// <param name="On">Whether it is in place; false heals.</param>
/// <param name="Value">The magnitude, SI; 0 where there is none. When it heals its harmless value, 0 where there is none.</param>
/// <param name="Second">The second number, SI; 0 where there is none.</param>
/// <param name="NowUs">The present, us.</param>
public readonly record struct FaultSetting(bool On, double Value, double Second, long NowUs);
