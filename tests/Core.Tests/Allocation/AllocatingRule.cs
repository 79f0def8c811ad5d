namespace LubeController.Core.Tests;

/// <summary>A rest rule that allocates one object each time the scan lets it advance; otherwise <see cref="ScenarioRule"/>.</summary>
internal sealed class AllocatingRule : IRestRule
{
    private readonly ScenarioRule _rule = new();

    /// <summary>What was allocated last: a field, so that the runtime cannot leave the allocation out.</summary>
    public object? Allocated { get; private set; }

    /// <summary>How many objects were allocated.</summary>
    public int Count { get; set; }

    public int SettingCount => _rule.SettingCount;

    public SettingSpec Setting(int index) => _rule.Setting(index);

    public void Set(int index, int value) => _rule.Set(index, value);

    public void Begin() => _rule.Begin();

    public void Advance(int elapsedMs, int shaftPulses, Inputs held)
    {
        Allocated = new object();
        Count++;
        _rule.Advance(elapsedMs, shaftPulses, held);
    }

    public int RemainingMs(Inputs inputs) => _rule.RemainingMs(inputs);

    public int RemainingShaftPulses(Inputs inputs) => _rule.RemainingShaftPulses(inputs);

    public void Transfer(StateStream stream) => _rule.Transfer(stream);
}
