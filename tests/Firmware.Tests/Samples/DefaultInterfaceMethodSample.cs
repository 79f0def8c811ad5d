namespace LubeController.Firmware.Tests.Samples;

/// <summary>Interface methods with a body.</summary>
public static class DefaultInterfaceMethodSample
{
    public interface IWithBody
    {
        int Ask() => 1;
    }

    public interface IWithStatic
    {
        static int Ask() => 1;
    }

    public interface IGood
    {
        int Value { get; }

        int Ask();
    }
}
