namespace LubeController.Plant.Description;

/// <summary>The source of flow: a <see cref="CamPumpDescription"/> or a <see cref="ConstantFlowPumpDescription"/>.</summary>
public abstract record PumpDescription;
